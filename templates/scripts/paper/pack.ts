/** Something that stands whole on one sheet. */
interface Piece {
  /** Printed height in a column, in any one unit. */
  readonly height: number;
  /** Printed height where it takes the width of the sheet, with its words in two columns; `null` where it never does. */
  readonly wide: number | null;
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

/** Pieces beside each other in columns, each from a number on up to another that is left out, or one across the sheet. */
export interface Part {
  readonly wide: boolean;
  readonly columns: readonly { readonly from: number; readonly to: number }[];
}

/** What a sheet holds of a run, one part below the other. */
export interface Band {
  readonly run: number;
  /** Whether it is where the run begins. */
  readonly begins: boolean;
  readonly parts: readonly Part[];
}

/**
 * Lays runs out on sheets in their order, on few sheets: a run goes on below the one before where its head and at
 * least one piece find room, and its last columns are of about one height. Where a column would stand beside nothing, or
 * a piece finds no room in one, it takes the width of the sheet. A piece that is higher than a sheet stands on one
 * alone; whoever makes pieces sees to it that none is.
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
      const filled = fill(run, at, space);
      if (sheets.length === 0 || (!empty && (space < 0 || (filled.to === at && at < run.pieces.length)))) {
        turn();
        continue;
      }
      // Nothing fits on an empty sheet: what is higher than that stands there all the same.
      const { to, used, parts } = filled.to === at && at < run.pieces.length ? alone(run, at) : filled;
      sheets.at(-1)?.push({ run: index, begins, parts });
      left -= (empty ? 0 : gap) + (begins ? run.head : run.again) + used;
      at = to;
      begins = false;
      if (at < run.pieces.length) turn();
    }
  }
  return sheets;
}

/** What of a run stands in a space. */
interface Filled {
  /** The number of the first piece that finds no room any more. */
  readonly to: number;
  readonly used: number;
  readonly parts: readonly Part[];
}

/** The most pieces across the sheet that one of them holds: more would read as a page of lines, not as a sheet in columns. */
const MOST_WIDE = 2;

/** How many ends of the columns are tried before a piece across the sheet. */
const ENDS = 6;

/** What a piece across the sheet must save of the space to be worth the break in the columns. */
const WORTH = 0.08;

/** Fills a space so that the run comes furthest; where it ends there, with the least height. */
function fill(run: Run, from: number, space: number): Filled {
  if (run.columns === 2 && run.pieces.some(({ wide }) => wide !== null)) {
    return furthest(run, from, space, MOST_WIDE, true);
  }
  const to = fitting(run, from, space);
  return inColumns(run, from, to, to === run.pieces.length ? leastHeight(run, from, to, space) : space);
}

function furthest(run: Run, from: number, space: number, wides: number, columnsToo: boolean): Filled {
  const all = run.pieces.length;
  const ways: Filled[] = [{ to: from, used: 0, parts: [] }];
  if (columnsToo) {
    const most = fitting(run, from, space);
    for (let to = most; to > Math.max(from, most - ENDS); to -= 1) {
      if (to < all && run.pieces[to - 1]?.keep) continue;
      const low = inColumns(run, from, to, leastHeight(run, from, to, space));
      const rest = furthest(run, to, space - low.used, wides, false);
      ways.push(rest.to === to && to < all ? inColumns(run, from, to, space) : below(low, rest));
    }
  }
  const across = wides > 0 ? acrossSheet(run, from, space) : null;
  if (across) ways.push(below(across, furthest(run, across.to, space - across.used, wides - 1, true)));
  const cost = ({ to, used, parts }: Filled) =>
    (to === all ? used : 0) + parts.filter(({ wide }) => wide).length * WORTH * space;
  return ways.reduce((best, way) =>
    way.to > best.to || (way.to === best.to && cost(way) < cost(best)) ? way : best,
  );
}

const below = (above: Filled, rest: Filled): Filled => ({
  to: rest.to,
  used: above.used + rest.used,
  parts: [...above.parts, ...rest.parts],
});

/** The next piece across the sheet, with what must stand before it. */
function acrossSheet(run: Run, from: number, space: number): Filled | null {
  const last = run.pieces.findIndex(({ keep }, index) => index >= from && !keep);
  const own = run.pieces.slice(from, last + 1);
  if (last < 0 || own.some(({ wide }) => wide === null)) return null;
  const used = own.reduce((sum, { wide }) => sum + (wide ?? 0), 0);
  return used > space
    ? null
    : { to: last + 1, used, parts: [{ wide: true, columns: [{ from, to: last + 1 }] }] };
}

function inColumns(run: Run, from: number, to: number, height: number): Filled {
  const columns = columnsOf(run, from, to, height);
  const used = Math.max(0, ...columns.map((column) => heightOf(run, column.from, column.to)));
  return { to, used, parts: [{ wide: false, columns }] };
}

const alone = (run: Run, at: number): Filled => ({
  to: at + 1,
  used: heightOf(run, at, at + 1),
  parts: [{ wide: false, columns: [{ from: at, to: at + 1 }] }],
});

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

/** The least height at which pieces of a run stand in its columns. */
function leastHeight(run: Run, from: number, to: number, most: number): number {
  const heights: number[] = [];
  for (let start = from; start < to; start += 1) {
    let height = 0;
    for (const piece of run.pieces.slice(start, to)) {
      height += piece.height;
      if (height > most) break;
      heights.push(height);
    }
  }
  // The least comes first, so that few are tried.
  const enough = heights.sort((a, b) => a - b).find((height) => fitting(run, from, height) >= to);
  return enough ?? most;
}

function columnsOf(run: Run, from: number, to: number, height: number): Part['columns'] {
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
