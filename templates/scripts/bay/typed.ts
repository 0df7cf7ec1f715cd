import type { BayData } from '../../../src/pages/guide/bay-data.ts';
import { make } from './elements.ts';
import { type Field, field, wordsOf } from './field.ts';

/** The readings of the page, which stand on it without this script too. */
export function readingFields({ words }: BayData): readonly Field[] {
  return [...document.querySelectorAll<HTMLInputElement>('input[data-reading]')].map((input) => {
    const side = sideOf(input.dataset.side);
    if (input.dataset.words) offerWords(input, input.dataset.words.split('|'));
    const asked = wordsOf(input.closest('tr')?.querySelector('th'));
    return field(
      input,
      side === null ? `reading ${input.dataset.reading}` : `reading ${input.dataset.reading} ${side}`,
      side === null ? asked : `${asked}, ${words[side]} side`,
    );
  });
}

/** Words that a reading may show are picked rather than typed. */
function offerWords(input: HTMLInputElement, words: readonly string[]): void {
  const list = make('datalist', '', ...words.map((word) => new Option(word)));
  list.id = `words_${document.querySelectorAll('datalist').length}`;
  input.after(list);
  input.setAttribute('list', list.id);
}

/** A field that is added to each torque, or two where it is set on each side. */
export function torqueFields({ steps, words }: BayData): readonly Field[] {
  const sided = new Set(steps.filter(({ sides }) => sides).map(({ id }) => id));
  return [...document.querySelectorAll<HTMLElement>('[data-torque]')].flatMap((line) => {
    const asked = wordsOf(line.querySelector('dd'));
    const sides = sided.has(line.closest('.step')?.id ?? '') ? (['left', 'right'] as const) : [null];
    return sides.map((side) => torqueField(line, side && { side, name: words[side] }, asked));
  });
}

function torqueField(
  line: HTMLElement,
  sided: { readonly side: 'left' | 'right'; readonly name: string } | null,
  asked: string,
): Field {
  const input = make('input', 'reading');
  input.type = 'text';
  input.autocomplete = 'off';
  input.inputMode = 'decimal';
  // Lets the style sheet see that it is empty: an empty one does not print, since the log has a place to write.
  input.placeholder = ' ';
  if (sided) input.dataset.side = sided.side;
  const words = sided ? `${asked}, ${sided.name} side` : asked;
  input.setAttribute('aria-label', `Torque set: ${words}`);
  const name = sided ? `Set to, ${sided.name} side` : 'Set to';
  line.querySelector('dd')?.append(make('span', 'bay-set', make('span', '', name), input));
  return field(input, `torque ${line.dataset.torque} ${sided?.side ?? ''}`, words);
}

function sideOf(text: string | undefined): 'left' | 'right' | null {
  return text === 'left' || text === 'right' ? text : null;
}
