/** Something that stands whole on one sheet. */
interface Piece {
  /** Printed height, in any one unit. */
  readonly height: number;
  /** Whether what follows must stand on the same sheet and in the same column: a heading, a message that guards it. */
  readonly keep: boolean;
}

/** Pieces that stand under one head: a section with its safety messages, or a sheet of lists. */
export interface Run {
  /** Height of the head where the run begins, and of the one that stands on each further sheet. */
  readonly head: number;
  readonly again: number;
  readonly columns: 1 | 2;
  /** Whether it begins on a sheet of its own. */
  readonly fresh: boolean;
  readonly pieces: readonly Piece[];
}

/** What a sheet holds of a run: in each column the pieces from a number on, up to another that is left out. */
export interface Band {
  readonly run: number;
  /** Whether it is where the run begins. */
  readonly begins: boolean;
  readonly columns: readonly { readonly from: number; readonly to: number }[];
}

/**
 * Lays runs out on sheets in their order, on few sheets: a run goes on below the one before where its head and at
 * least one piece find room, and its last columns are of about one height. A piece that is higher than a sheet stands on
 * one alone; whoever makes pieces sees to it that none is.
 *
 * @param room height of a sheet
 * @param gap height between two runs on one sheet
 */
export function pack(runs: readonly Run[], room: number, gap: number): readonly (readonly Band[])[] {
  const sheets: Band[][] = [];
  let left = 0;
  const turn = () => {
    sheets.push([]);
    left = room;
  };
  for (const [index, run] of runs.entries()) {
    if (run.fresh) left = 0;
    let at = 0;
    let begins = true;
    while (at < run.pieces.length || begins) {
      const empty = sheets.at(-1)?.length === 0;
      const space = left - (empty ? 0 : gap) - (begins ? run.head : run.again);
      const most = fitting(run, at, space);
      if (sheets.length === 0 || (!empty && (space < 0 || (most === at && at < run.pieces.length)))) {
        turn();
        continue;
      }
      // Nothing fits on an empty sheet: what is higher than that stands there all the same.
      const to = most === at && at < run.pieces.length ? at + 1 : most;
      const height = to === run.pieces.length ? leastHeight(run, at, space) : space;
      const columns = columnsOf(run, at, to, height);
      sheets.at(-1)?.push({ run: index, begins, columns });
      const used = Math.max(0, ...columns.map((column) => heightOf(run, column.from, column.to)));
      left -= (empty ? 0 : gap) + (begins ? run.head : run.again) + used;
      at = to;
      begins = false;
      if (at < run.pieces.length) turn();
    }
  }
  return sheets;
}

/** The number of the first piece that finds no room in the columns any more. */
function fitting(run: Run, from: number, height: number): number {
  let at = from;
  for (let column = 0; column < run.columns; column += 1) at = columnEnd(run, at, height);
  return at;
}

/** Where a column of a height ends: never after a piece that must stay with the next. */
function columnEnd(run: Run, from: number, height: number): number {
  let [at, used, end] = [from, 0, from];
  while (at < run.pieces.length) {
    const piece = run.pieces[at];
    if (!piece || used + piece.height > height) break;
    used += piece.height;
    at += 1;
    if (!piece.keep || at === run.pieces.length) end = at;
  }
  return end;
}

/** The least height at which all that is left of a run stands in its columns. */
function leastHeight(run: Run, from: number, most: number): number {
  const heights: number[] = [];
  for (let start = from; start < run.pieces.length; start += 1) {
    for (let end = start + 1; end <= run.pieces.length; end += 1) heights.push(heightOf(run, start, end));
  }
  const enough = heights.filter(
    (height) => height <= most && fitting(run, from, height) === run.pieces.length,
  );
  return enough.length === 0 ? most : Math.min(...enough);
}

function columnsOf(run: Run, from: number, to: number, height: number): Band['columns'] {
  if (run.columns === 1) return [{ from, to }];
  const middle = Math.min(columnEnd(run, from, height), to);
  // What is higher than its sheet fits no column.
  return middle === from
    ? [{ from, to }]
    : [
        { from, to: middle },
        { from: middle, to },
      ];
}

function heightOf({ pieces }: Run, from: number, to: number): number {
  return pieces.slice(from, to).reduce((sum, { height }) => sum + height, 0);
}
