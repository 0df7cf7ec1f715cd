import { make } from './elements.ts';
import { type Field, field, wordsOf } from './field.ts';

/** The readings of the page, which stand on it without this script too. */
export function readingFields(): readonly Field[] {
  return [...document.querySelectorAll<HTMLInputElement>('input[data-reading]')].map((input) => {
    const side = input.dataset.side ? ` ${input.dataset.side}` : '';
    const asked = wordsOf(input.closest('tr')?.querySelector('th'));
    return field(
      input,
      `reading ${input.dataset.reading}${side}`,
      side === '' ? asked : `${asked},${side} side`,
    );
  });
}

/** A field that is added to each torque, or two where it is set on each side. */
export function torqueFields(sided: ReadonlySet<string>): readonly Field[] {
  return [...document.querySelectorAll<HTMLElement>('[data-torque]')].flatMap((line) => {
    const asked = wordsOf(line.querySelector('dd'));
    const sides = sided.has(line.closest('.step')?.id ?? '') ? ['left', 'right'] : [''];
    return sides.map((side) => torqueField(line, side, asked));
  });
}

function torqueField(line: HTMLElement, side: string, asked: string): Field {
  const input = make('input', 'reading');
  input.type = 'text';
  input.autocomplete = 'off';
  input.inputMode = 'decimal';
  // Lets the style sheet see that it is empty: an empty one does not print, since the log has a place to write.
  input.placeholder = ' ';
  if (side !== '') input.dataset.side = side;
  const words = side === '' ? asked : `${asked}, ${side} side`;
  input.setAttribute('aria-label', `Torque set: ${words}`);
  const name = side === '' ? 'Set to' : `Set to, ${side} side`;
  line.querySelector('dd')?.append(make('span', 'bay-set', make('span', '', name), input));
  return field(input, `torque ${line.dataset.torque} ${side}`, words);
}
