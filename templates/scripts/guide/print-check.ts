import { checkPrint, correctionCommand, type PrintCheck } from '../../../src/trade/print-check.ts';
import { correctedSheets } from './corrected-sheets.ts';
import { readMeasured } from './measured.ts';

/** Below this a bare number is inches: no print of a 100 mm square is so small. */
const INCHES_BELOW = 10;

/** Readies the print check of every template: two measured sides in, cause and mend out. */
export function startPrintChecks(): void {
  for (const check of document.querySelectorAll<HTMLElement>('.print-check')) start(check);
}

function start(check: HTMLElement): void {
  const sides = check.querySelector<HTMLElement>('.print-sides');
  const across = check.querySelector<HTMLInputElement>('.across');
  const up = check.querySelector<HTMLInputElement>('.up');
  const verdict = check.querySelector<HTMLElement>('.verdict');
  if (!sides || !across || !up || !verdict) return;

  const judge = (): void => {
    const [x, y] = [readSide(across.value), readSide(up.value)];
    verdict.replaceChildren(...(x === null || y === null ? [paragraph(unread)] : told(x, y, check)));
  };
  sides.hidden = false;
  sides.querySelector('button')?.addEventListener('click', judge);
  for (const input of [across, up]) {
    // What was said of other numbers must not stand beside these.
    input.addEventListener('input', () => verdict.replaceChildren());
    input.addEventListener('keydown', ({ key }) => {
      if (key === 'Enter') judge();
    });
  }
}

const unread = 'Give both sides of the 100 mm square as numbers, such as 99.6.';

/** A side in millimetres, to the hundredth that the command prints, from `99.6`, `99,6`, `3.94` or `3 15/16 in`; `null` for what is no length. */
function readSide(text: string): number | null {
  const side = readMeasured(text, 'length', (bare) => (bare < INCHES_BELOW ? 'in' : 'mm'));
  return side === null ? null : Number(side.toFixed(2));
}

/** What the two sides mean, in the words of a technician. */
function told(across: number, up: number, element: HTMLElement): HTMLElement[] {
  const check = checkPrint(across, up);
  const { guide = '', template = '' } = element.dataset;
  const verdict = check.kind === 'true' ? 'true to size.' : 'do not use these sheets.';
  return [
    paragraph(`${across} × ${up} mm: ${verdict}`, 'strong'),
    ...mends(check, correctionCommand(guide, template, across, up), element),
  ];
}

function mends(check: PrintCheck, command: string, element: HTMLElement): HTMLElement[] {
  switch (check.kind) {
    case 'true':
      return [paragraph('Both diagonals must measure 141.4 mm too.')];
    case 'setting':
      return [
        list(check.causes.map(({ cause, mend }) => `${capital(cause)}. ${capital(mend)}.`)),
        paragraph('Print again and measure again.'),
      ];
    case 'correct':
      return [
        paragraph('No setting explains it, so the printer itself is off. Sheets made for it come out true:'),
        ...correctedSheets(element, check.correction),
        paragraph('Whoever keeps the guides makes the same with:'),
        paragraph(command, 'code'),
      ];
    case 'refused':
      return [paragraph(`${capital(check.reason)}.`)];
  }
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function paragraph(text: string, inner?: 'strong' | 'code'): HTMLElement {
  const element = document.createElement('p');
  if (inner) element.append(withText(inner, text));
  else element.textContent = text;
  return element;
}

function list(lines: readonly string[]): HTMLElement {
  const element = document.createElement('ul');
  element.append(...lines.map((line) => withText('li', line)));
  return element;
}

function withText(tag: string, text: string): HTMLElement {
  const element = document.createElement(tag);
  element.textContent = text;
  return element;
}
