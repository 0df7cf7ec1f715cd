import { make } from './elements.ts';
import type { Keeper } from './keeper.ts';
import { withValue } from './progress.ts';

/** A field of the page: what it asks for, and the step it belongs to. */
export interface Field {
  readonly key: string;
  readonly asked: string;
  readonly step: string | null;
  readonly input: HTMLInputElement;
}

/** The fields of the page: those of the readings, and one that is added to each torque, or two where it is set on each side. */
export function findFields(sided: ReadonlySet<string>): readonly Field[] {
  const readings = [...document.querySelectorAll<HTMLInputElement>('input[data-reading]')].map((input) =>
    field(input, `reading ${input.dataset.reading}`, wordsOf(input.closest('tr')?.querySelector('th'))),
  );
  const torques = [...document.querySelectorAll<HTMLElement>('[data-torque]')].flatMap((line) =>
    torqueFields(line, sided),
  );
  return numbered([...readings, ...torques]);
}

function torqueFields(line: HTMLElement, sided: ReadonlySet<string>): readonly Field[] {
  const asked = wordsOf(line.querySelector('dd'));
  const sides = sided.has(line.closest('.step')?.id ?? '') ? ['left side', 'right side'] : [''];
  return sides.map((side) => {
    const input = make('input', 'reading');
    input.type = 'text';
    input.autocomplete = 'off';
    input.inputMode = 'decimal';
    const words = side === '' ? asked : `${asked}, ${side}`;
    input.setAttribute('aria-label', `Torque set: ${words}`);
    const name = side === '' ? 'Set to' : `Set to, ${side}`;
    line.querySelector('dd')?.append(make('span', 'bay-set', make('span', '', name), input));
    return field(input, `torque ${line.dataset.torque} ${side}`, words);
  });
}

function field(input: HTMLInputElement, name: string, asked: string): Field {
  const step = input.closest('.step')?.id ?? null;
  const place = step ?? input.closest('.part')?.id ?? '';
  return { key: `${place} ${name}`, asked, step, input };
}

/** Fields of one name in one step, told apart by their order. */
function numbered(fields: readonly Field[]): readonly Field[] {
  const seen = new Map<string, number>();
  return fields.map((one) => {
    const count = (seen.get(one.key) ?? 0) + 1;
    seen.set(one.key, count);
    return count === 1 ? one : { ...one, key: `${one.key} ${count}` };
  });
}

function wordsOf(element: Element | null | undefined): string {
  return (element?.textContent ?? '').replace(/\s+/g, ' ').trim();
}

/** Keeps what is typed, and shows what was kept. */
export function keepFields(fields: readonly Field[], keeper: Keeper): void {
  for (const { key, asked, step, input } of fields) {
    input.addEventListener('input', () =>
      keeper.change((progress) => withValue(progress, key, { asked, step, text: input.value })),
    );
  }
  keeper.onChange(({ values }) => {
    for (const { key, input } of fields) {
      const text = values.get(key)?.text ?? '';
      // Setting the same text again would move the cursor of whoever types, and drop a space just typed.
      if (input.value.trim() !== text.trim()) input.value = text;
    }
  });
}
