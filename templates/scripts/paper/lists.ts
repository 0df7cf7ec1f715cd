import { make } from '../bay/elements.ts';
import { partsOf } from './compact.ts';
import { copyOf, wordsIn } from './copy.ts';

/** A piece of a list, and whether it must stand with what follows. */
export interface ListPiece {
  readonly element: HTMLElement;
  readonly keep: boolean;
}

const rowsOf = (table: Element): readonly HTMLTableRowElement[] =>
  [...table.querySelectorAll<HTMLTableRowElement>('tbody tr')].filter((row) => !row.hidden);

/** What is laid out before the job, a line for each thing: a box, its name, how many, and the step that asks for it first. */
export function gatherPieces(table: Element): readonly ListPiece[] {
  return rowsOf(table).map((row) => {
    if (row.matches('.group')) return { element: make('h3', '', wordsIn(row)), keep: true };
    const box = row.querySelector<HTMLInputElement>('input[type="checkbox"]');
    const name = row.querySelector('th');
    const sizes = [...row.querySelectorAll<HTMLElement>('.size')].filter(({ hidden }) => !hidden);
    const first = row.querySelector('.first');
    const steps = sizes.length > 0 ? sizes.map(sizeWithStep) : [wordsIn(first)];
    const amount = row.querySelector('.amount');
    return {
      element: make(
        'div',
        sizes.length > 0 ? 'paper-row sized' : 'paper-row',
        make('span', 'paper-tick', box?.checked ? '✓' : ''),
        make('div', '', ...(name ? copyOf(name).childNodes : [])),
        make('span', '', ...(amount ? copyOf(amount).childNodes : [])),
        make('i', '', ...steps),
      ),
      keep: false,
    };
  });
}

/** "10 mm" with the number of the step that asks for it, on one line. */
function sizeWithStep(size: HTMLElement): HTMLElement {
  const name = wordsIn(size.querySelector(':scope > .item, :scope > span'));
  return make('span', 'paper-size', name, make('b', '', wordsIn(size).slice(name.length).trim()));
}

/**
 * A table that is filled in, as pieces of a few rows, each with the head of its columns where a sheet begins with it.
 * The first holds the heading, so that none stands alone.
 */
export function recordPieces(section: HTMLElement): readonly ListPiece[] {
  const table = section.querySelector('table');
  const title = make('h2', '', wordsIn(section.querySelector('h2')));
  if (!table) return [];
  const head = table.querySelector('thead');
  const rows = rowsOf(table);
  const chunks = Math.ceil(rows.length / ROWS);
  return Array.from({ length: chunks }, (_, chunk) => {
    const own = rows.slice(chunk * ROWS, (chunk + 1) * ROWS).map((row) => copyOf(row));
    const body = make('table', '', ...(head ? [copyOf(head)] : []), make('tbody', '', ...own));
    const again = chunk === 0 ? title : make('h2', '', `${title.textContent ?? ''}, continued`);
    return { element: make('section', 'paper-table', again, body), keep: false };
  });
}

/** Rows of a record that stay together. */
const ROWS = 24;

/** The labels of the bags, each with the vehicle that its screws belong to. */
export function labelPieces(section: Element): readonly ListPiece[] {
  return partsOf(section.querySelector('.bags')).map((label) => {
    const [number, title, vehicle, ...rest] = partsOf(label).map(copyOf);
    const place = make('b', '');
    place.dataset.factOf = 'identity';
    const name = `${(vehicle?.textContent ?? '').replace(/:.*$/s, '')}: `;
    const head = make(
      'div',
      'paper-bag',
      make('b', '', number?.textContent ?? ''),
      make('span', '', name, place),
    );
    return {
      element: make('div', 'paper-label', make('div', '', head, ...(title ? [title] : []), ...rest)),
      keep: false,
    };
  });
}
