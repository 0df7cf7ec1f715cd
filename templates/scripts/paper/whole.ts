import { make } from '../bay/elements.ts';
import { buildWords } from './cover.ts';
import { isLong, keepEnds } from './rows.ts';
import { vehicleWords } from './vehicle.ts';

/** What begins something, so that a sheet must not end with it. */
const HEADINGS = 'h1, h2, h3, h4, h5, h6, .part-head, .line-title';

/**
 * Does for the print of the whole guide what a browser without margin boxes (Firefox) leaves undone: the foot of each
 * sheet says the build and the vehicle too, and each heading is kept on the sheet of what follows, behind which such a
 * browser breaks whatever its style says. For the time of a print both stand in one box that is not torn.
 */
export function mendSheets(main: HTMLElement): void {
  if ('CSSMarginRule' in window) return;
  tellAtFoot(main);
  const undo: (() => void)[] = [];
  window.addEventListener('beforeprint', () => {
    const places = main.querySelectorAll<HTMLElement>(':scope > section, :scope > .sheets > section');
    for (const place of [main, ...places]) undo.push(...kept(place));
    for (const table of main.querySelectorAll('table')) undo.push(...keepEnds(table));
  });
  window.addEventListener('afterprint', () => {
    for (const back of undo.splice(0)) back();
  });
}

/** A sheet that lies alone is known by its foot. */
function tellAtFoot(main: HTMLElement): void {
  const foot = document.querySelector('.colophon p');
  const told = make('span', 'paper-lone');
  window.addEventListener('beforeprint', () => {
    const blank = '_'.repeat(16);
    told.textContent = ` · Build: ${buildWords() || blank} · ${vehicleWords(main, blank)}`;
    foot?.append(told);
  });
  window.addEventListener('afterprint', () => told.remove());
}

/**
 * Puts each heading, the messages of a section behind it and the first thing that they guard into a box; a table that
 * may be longer than a sheet stays behind it, and the box asks for the room of its first lines.
 */
function kept(place: HTMLElement): readonly (() => void)[] {
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
    const goesOn = next instanceof HTMLTableElement && isLong(next);
    const box = make('div', goesOn ? 'paper-kept paper-leads' : 'paper-kept');
    heading.before(box);
    box.append(...held, ...(goesOn ? [] : [next]));
    boxes.push(box);
  }
  return boxes.map((box) => () => box.replaceWith(...box.childNodes));
}

/** What the print leaves out. */
const UNPRINTED =
  '[hidden=""], .bay-fold, .comes-off, .schedule, .course, .schedule-link, .why, .owner, .bay-held, .files, .files-title';

const isHidden = (element: Element) => element.matches(UNPRINTED);
