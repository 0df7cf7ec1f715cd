import type { Dimension } from '../../../src/units/quantity.ts';
import { readMeasured } from '../measured.ts';
import { make, say } from './elements.ts';
import type { Field } from './field.ts';
import type { Keeper } from './keeper.ts';

/** Says of each value that is typed in whether it is one that the guide expects. */
export function addVerdicts(fields: readonly Field[], keeper: Keeper): void {
  for (const { input } of fields) {
    const check = input.closest<HTMLElement>('[data-ranges]')?.dataset;
    if (!check) continue;
    const verdict = make('span', 'bay-verdict');
    verdict.setAttribute('role', 'status');
    input.after(verdict);
    const judge = () => say(verdict, verdictWords(input.value, check));
    // Half a number is no reading: whoever types is told when done.
    input.addEventListener('change', judge);
    input.addEventListener('input', () => say(verdict, ''));
    keeper.onChange(() => {
      if (document.activeElement !== input) judge();
    });
  }
}

/** What is wrong with a value, in words; empty for one that is expected, and for none. */
function verdictWords(
  text: string,
  { dimension, unit = '', ranges = '', otherwise = '' }: DOMStringMap,
): string {
  if (text.trim() === '') return '';
  const found = readMeasured(text, dimension as Dimension, () => unit);
  if (found === null) return `Not compared: give a number, in ${unit} or with its unit.`;
  const isExpected = ranges.split(' ').some((range) => {
    const [least, most] = range.split('..').map(Number);
    return found >= Number(least) && found <= Number(most);
  });
  return isExpected ? '' : otherwise;
}
