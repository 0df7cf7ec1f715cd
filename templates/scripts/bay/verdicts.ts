import type { Dimension } from '../../../src/units/quantity.ts';
import { readMeasured } from '../measured.ts';
import { make, say } from './elements.ts';
import type { Keeper } from './keeper.ts';

/** Says of each reading whether it lies in the range that the guide expects. */
export function addVerdicts(keeper: Keeper): void {
  for (const input of document.querySelectorAll<HTMLInputElement>('input[data-least]')) {
    const verdict = make('p', 'bay-verdict');
    verdict.setAttribute('role', 'status');
    input.after(verdict);
    const judge = () => say(verdict, verdictWords(input.value, input.dataset));
    // Half a number is no reading: whoever types is told when done.
    input.addEventListener('change', judge);
    input.addEventListener('input', () => say(verdict, ''));
    keeper.onChange(() => {
      if (document.activeElement !== input) judge();
    });
  }
}

/** What is wrong with a reading, in words; empty for one that lies in its range, and for none. */
function verdictWords(text: string, { dimension, unit, least, most, expected }: DOMStringMap): string {
  if (text.trim() === '') return '';
  const found = readMeasured(text, dimension as Dimension, () => unit ?? '');
  if (found === null) return `Not compared: give a number, in ${unit} or with its unit.`;
  if (found >= Number(least) && found <= Number(most)) return '';
  return `Outside ${expected}. Measure again. If it stays so, find the cause before you go on.`;
}
