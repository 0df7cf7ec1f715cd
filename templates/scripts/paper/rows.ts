import { make } from '../bay/elements.ts';

/** Rows of a table that never stand alone at its end, and behind the head of a group at its beginning. */
const TOGETHER = 3;

/** Rows above which a table may be longer than a sheet, where a few of them take three lines. */
const LONG = 12;

/** Whether a table may be longer than a sheet of paper. */
export function isLong(table: HTMLTableElement): boolean {
  return shownIn(table.rows).length > LONG;
}

const shownIn = (rows: Iterable<HTMLTableRowElement>) => [...rows].filter(({ hidden }) => !hidden);

/**
 * Keeps the first rows of each part of a table together, with the head of the part among them, and its last ones: they
 * stand in bodies of their own, and a body is what every browser leaves whole.
 *
 * @returns what undoes it
 */
export function keepEnds(table: HTMLTableElement): readonly (() => void)[] {
  return [...table.tBodies].map((body) => {
    const shown = shownIn(body.rows);
    const [last, middle] = [make('tbody', 'paper-kept'), make('tbody', '')];
    const [second, ending] = [shown[TOGETHER], shown[shown.length - TOGETHER]];
    if (second && ending && shown.length > 2 * TOGETHER) {
      const rows = [...body.rows];
      middle.append(...rows.slice(rows.indexOf(second), rows.indexOf(ending)));
      last.append(...rows.slice(rows.indexOf(ending)));
      body.after(middle, last);
    }
    body.classList.add('paper-kept');
    return () => {
      body.classList.remove('paper-kept');
      body.append(...middle.rows, ...last.rows);
      middle.remove();
      last.remove();
    };
  });
}
