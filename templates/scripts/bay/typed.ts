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

/**
 * A field for each torque, or two where it is set on each side. They stand at the end of the step, where the work is
 * done, so that the torque itself and the first action stand at its beginning.
 */
export function torqueFields({ steps, words }: BayData): readonly Field[] {
  const sided = new Set(steps.filter(({ sides }) => sides).map(({ id }) => id));
  return [...document.querySelectorAll<HTMLElement>('[data-torque]')].flatMap((line, index) => {
    const step = line.closest('.step');
    const asked = wordsOf(line.querySelector('dd'));
    const sides = sided.has(step?.id ?? '') ? (['left', 'right'] as const) : [null];
    return sides.map((side) => {
      const ofSide = side ? `, ${words[side]} side` : '';
      const [input, set] = torqueField(line, asked, ofSide);
      input.dataset.line = String(index);
      if (side) input.dataset.side = side;
      step?.querySelector('.step-body')?.append(set);
      return field(input, `torque ${line.dataset.torque} ${side ?? ''}`, `${asked}${ofSide}`);
    });
  });
}

function torqueField(
  line: HTMLElement,
  asked: string,
  ofSide: string,
): readonly [HTMLInputElement, HTMLElement] {
  const input = make('input', 'reading');
  input.type = 'text';
  input.autocomplete = 'off';
  input.inputMode = 'decimal';
  // Lets the style sheet see that it is empty: an empty one does not print, since the log has a place to write.
  input.placeholder = ' ';
  input.setAttribute('aria-label', `Torque set: ${asked}${ofSide}`);
  const item = asked.replace(/:.*$/s, '');
  const set = make('div', 'bay-set', make('span', '', `Set to: ${item}${ofSide}`), input);
  const { plans, ranges, unit, dimension, otherwise } = line.dataset;
  for (const [name, value] of Object.entries({ plans, ranges, unit, dimension, otherwise })) {
    if (value !== undefined) set.dataset[name] = value;
  }
  set.hidden = line.hidden;
  return [input, set];
}

function sideOf(text: string | undefined): 'left' | 'right' | null {
  return text === 'left' || text === 'right' ? text : null;
}
