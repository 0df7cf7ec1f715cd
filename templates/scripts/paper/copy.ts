import { inOneLine, make } from '../bay/elements.ts';

/**
 * What a sheet has no use for: what is hidden for this build, told to trainees, or the page's own controls; and what a
 * thing looks like, since who prints the job sheet knows it by its name.
 */
const AWAY =
  '[hidden], .own, .why, .bench, .unseen, .sr-only, .place-name, .place-name + .dot, [class^="bay-"], button, [data-footnote-backref]';

/** Classes of the page that mean the same on a sheet; all others are the page's alone. */
const KEPT = new Map([
  ['action', 'paper-action'],
  ['detail', 'paper-detail'],
  ['only', 'paper-only'],
  ['quiet', 'paper-quiet'],
  ['blank', 'paper-blank'],
  ['short', 'paper-short'],
  ['sign', 'paper-sign'],
  ['write', 'paper-write'],
  ['tick', 'paper-tick'],
  ['line-title', 'paper-line'],
]);

/**
 * A copy of a piece of the page as it stands on a sheet, with all its words: without links, names and controls, and
 * with what was ticked and typed in.
 */
export function copyOf(from: Element): HTMLElement {
  const copy = from.cloneNode(true) as HTMLElement;
  // A copy of a field does not hold what was typed into it.
  const typed = [...from.querySelectorAll('input')].map((input) => typedInto(input));
  for (const [index, input] of [...copy.querySelectorAll('input')].entries()) {
    const value = typed[index] ?? '';
    if (input.type === 'checkbox') {
      input.closest('.evidence-line, li, td')?.setAttribute('data-done', value);
    } else input.replaceWith(make('span', input.type === 'radio' ? 'tick' : 'write', value));
  }
  for (const tick of copy.querySelectorAll('.tick')) {
    if (tick.matches('.seen-to') || tick.closest('[data-done="✓"]')) tick.textContent = '✓';
  }
  for (const away of copy.querySelectorAll(AWAY)) away.remove();
  if (isPicked()) for (const only of copy.querySelectorAll('.only')) only.remove();
  for (const link of copy.querySelectorAll('a')) link.replaceWith(make('span', '', ...link.childNodes));
  for (const element of [copy, ...copy.querySelectorAll('*')]) {
    if (!element.closest('svg')) strip(element);
  }
  return copy;
}

function typedInto({ type, checked, value }: HTMLInputElement): string {
  if (type !== 'checkbox' && type !== 'radio') return value;
  return checked ? '✓' : '';
}

/** The words of an element in one line; numbers stay with their units. */
export function wordsIn(element: Element | null | undefined): string {
  return element ? inOneLine(copyOf(element).textContent) : '';
}

/** Whether one build is shown, so that no word need say what is for which. */
export function isPicked(): boolean {
  return document.documentElement.dataset.plan !== undefined || !document.querySelector('.picker');
}

function strip(element: Element): void {
  const kept = [...element.classList].flatMap((name) => KEPT.get(name) ?? []);
  for (const { name } of [...element.attributes]) {
    if (!['colspan', 'scope', 'src', 'alt', 'width', 'height'].includes(name)) element.removeAttribute(name);
  }
  if (kept.length > 0) element.className = kept.join(' ');
}
