import { make } from '../bay/elements.ts';

/** What begins something, so that a sheet must not end with it. */
const HEADINGS = 'h1, h2, h3, h4, h5, h6, .part-head, .line-title';

/**
 * Keeps each heading of the whole guide on the sheet of what follows, in a browser that breaks a print behind a
 * heading whatever its style says (Firefox): for the time of a print both stand in one box that is not torn. A browser
 * that prints margin boxes keeps headings by itself.
 */
export function keepHeadings(main: HTMLElement): void {
  if ('CSSMarginRule' in window) return;
  const boxes: HTMLElement[] = [];
  window.addEventListener('beforeprint', () => {
    const places = main.querySelectorAll<HTMLElement>(':scope > section, :scope > .sheets > section');
    for (const place of [main, ...places]) boxes.push(...kept(place));
  });
  window.addEventListener('afterprint', () => {
    for (const box of boxes.splice(0)) box.replaceWith(...box.childNodes);
  });
}

/** Puts each heading, the messages of a section behind it and the first thing that they guard into a box. */
function kept(place: HTMLElement): readonly HTMLElement[] {
  const boxes: HTMLElement[] = [];
  const leads = place.matches('.part') ? `${HEADINGS}, .message` : HEADINGS;
  for (const heading of place.querySelectorAll<HTMLElement>(`:scope > :is(${leads})`)) {
    if (heading.parentElement !== place) continue;
    const held: Element[] = [heading];
    let next = heading.nextElementSibling;
    while (next && (isHidden(next) || next.matches(leads))) {
      held.push(next);
      next = next.nextElementSibling;
    }
    if (!next) continue;
    const box = make('div', 'paper-kept');
    heading.before(box);
    box.append(...held, next);
    boxes.push(box);
  }
  return boxes;
}

/** What the print leaves out. */
const UNPRINTED =
  '[hidden], .comes-off, .schedule, .schedule-link, .why, .owner, .bay-held, .files, .files-title';

const isHidden = (element: Element) => element.matches(UNPRINTED);
