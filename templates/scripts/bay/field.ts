import { inOneLine } from './elements.ts';
import type { Keeper } from './kept/keeper.ts';
import { TICKED, withValue } from './kept/progress.ts';

/** A field of the page: a text that is typed in, or a box that is ticked. */
export interface Field {
  readonly key: string;
  /** What it asks for, in words. */
  readonly asked: string;
  /** The step that it belongs to; `null` outside the steps. */
  readonly step: string | null;
  /** Whether it proves the finished job. */
  readonly proof: boolean;
  readonly input: HTMLInputElement;
}

/** @param name what sets the field apart from the others of its step, or of its section */
export function field(input: HTMLInputElement, name: string, asked: string): Field {
  const step = input.closest('.step')?.id ?? null;
  const place = step ?? input.closest('.part')?.id ?? '';
  return { key: `${place} ${name}`, asked, step, proof: input.closest('.prove') !== null, input };
}

/** Fields of one name in one step, told apart by their order. */
export function numbered(fields: readonly Field[]): readonly Field[] {
  const seen = new Map<string, number>();
  return fields.map((one) => {
    const count = (seen.get(one.key) ?? 0) + 1;
    seen.set(one.key, count);
    return count === 1 ? one : { ...one, key: `${one.key} ${count}` };
  });
}

/**
 * The words of an element in one line, without the numbers of steps: these change with the build that is picked. What
 * holds a number at its unit for the eye is not part of them, since fields are known by their words.
 */
export function wordsOf(element: Element | null | undefined): string {
  return shownWords(element).replaceAll('\u2060', '').replace(/\s+/g, ' ').trim();
}

/** The same words to be shown again: numbers stay with their units. */
export function shownWords(element: Element | null | undefined): string {
  const copy = element?.cloneNode(true);
  if (!(copy instanceof Element)) return '';
  for (const number of copy.querySelectorAll('[data-step]')) number.remove();
  return inOneLine(copy.textContent);
}

/** Keeps what is typed and ticked, and shows what was kept. */
export function keepFields(fields: readonly Field[], keeper: Keeper): void {
  for (const { key, asked, step, proof, input } of fields) {
    input.addEventListener('input', () =>
      keeper.change((progress) => withValue(progress, key, { asked, step, proof, text: textOf(input) })),
    );
  }
  keeper.onChange(({ values }) => {
    for (const { key, input } of fields) show(input, values.get(key)?.text ?? '');
  });
}

function textOf(input: HTMLInputElement): string {
  if (input.type !== 'checkbox') return input.value;
  return input.checked ? TICKED : '';
}

function show(input: HTMLInputElement, text: string): void {
  if (input.type === 'checkbox') input.checked = text !== '';
  // Setting the same text again would move the cursor of whoever types, and drop a space just typed.
  else if (input.value.trim() !== text.trim()) input.value = text;
}
