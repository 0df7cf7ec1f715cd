import { idLike } from '../directives/attributes/id-text.ts';
import { nounOf } from '../job/words/noun.ts';

/** An option of a vehicle: yes or no. */
export interface NewOption {
  readonly id: string;
  readonly name: string;
}

/** Something in the box. */
export interface NewKit {
  readonly id: string;
  readonly label: string;
  readonly count: number;
}

/**
 * Reads an option as it is typed: `fog=Front fog lamps`, or the name alone, which gives the id. `null` where nothing
 * of it makes an id.
 */
export function readOption(typed: string): NewOption | null {
  const [, given, rest] = /^([a-z0-9-]+)\s*=\s*(.+)$/.exec(typed.trim()) ?? [];
  const name = (rest ?? typed).trim();
  const id = idLike(given ?? name);
  return id === undefined ? null : { id, name };
}

/** Reads things in the box as they are typed, each `Cradle` or `M8 flange nut x4`; two of one name get ids of their own. */
export function kitTyped(typed: readonly string[]): readonly NewKit[] {
  const taken = new Set<string>();
  return typed.flatMap((one) => {
    const [, name, times] = /^(.*?)(?:\s+[x×]\s*(\d+))?$/u.exec(one.trim()) ?? [];
    const likely = idLike(nounOf(name ?? '').singular);
    if (!name || likely === undefined) return [];
    let id = likely;
    for (let next = 2; taken.has(id); next += 1) id = `${likely}-${next}`;
    taken.add(id);
    return [{ id, label: name, count: Math.max(1, Number(times ?? 1)) }];
  });
}

/** Text as a plain YAML value where that is read back as the same text; in quotes where it is not. */
export function yamlValue(text: string): string {
  const plain = /^[A-Za-z(][^:#"'\\{}[\],&*!|>%@`\n\t]*$/.test(text) && text === text.trim();
  return plain && !/^(?:yes|no|true|false|null|on|off)$/i.test(text) ? text : JSON.stringify(text);
}

/** The lines of `options:` in a front matter; none without options. */
export function optionLines(options: readonly NewOption[]): readonly string[] {
  return options.length === 0
    ? []
    : ['options:', ...options.map(({ id, name }) => `  ${id}: ${yamlValue(name)}`)];
}
