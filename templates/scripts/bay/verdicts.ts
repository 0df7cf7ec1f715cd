import type { Dimension } from '../../../src/units/quantity.ts';
import { readMeasured } from '../guide/measured.ts';
import { make, say } from './elements.ts';
import type { Field } from './field.ts';
import type { Keeper } from './kept/keeper.ts';

/** Says of each value that is typed in whether it is one that the guide expects. */
export function addVerdicts(fields: readonly Field[], keeper: Keeper): void {
  for (const { input } of fields) {
    if (!checkOf(input)) continue;
    const verdict = make('span', 'bay-verdict');
    verdict.setAttribute('role', 'status');
    input.after(verdict);
    const judge = () => say(verdict, verdictOn(input));
    // Half a number is no reading: whoever types is told when done.
    input.addEventListener('change', judge);
    input.addEventListener('input', () => say(verdict, ''));
    keeper.onChange(() => {
      if (document.activeElement !== input) judge();
    });
  }
}

/** What is wrong with what a field holds, in words; empty where it is expected, or nothing is. */
export function verdictOn(input: HTMLInputElement): string {
  const check = checkOf(input);
  return check ? verdictWords(input.value, check) : '';
}

function checkOf(input: HTMLInputElement): DOMStringMap | undefined {
  return input.closest<HTMLElement>('[data-ranges], [data-words]')?.dataset;
}

/** What is wrong with a value, in words; empty for one that is expected, and for none. */
function verdictWords(
  text: string,
  { dimension, unit = '', ranges = '', words, otherwise = '' }: DOMStringMap,
): string {
  const typed = text.trim().toLowerCase();
  if (typed === '') return '';
  if (words !== undefined) return words.toLowerCase().split('|').includes(typed) ? '' : otherwise;
  const found = readMeasured(text, dimension as Dimension, () => unit);
  if (found === null) return `Not compared: give a number, in ${unit} or with its unit.`;
  const isExpected = ranges.split(' ').some((range) => {
    const [least, most] = range.split('..').map(Number);
    return found >= Number(least) && found <= Number(most);
  });
  return isExpected ? '' : otherwise;
}
