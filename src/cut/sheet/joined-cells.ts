/** The printed cells of a grid with those added without which sheets could not be taped. */
interface JoinedCells {
  /** All hang together. */
  readonly hanging: readonly number[];
  /** And no gap between two strips is longer than one sheet: no two are joined at their ends alone. */
  readonly withRungs: readonly number[];
}

/** Adds to the cells of a grid that must be printed what holds them together. */
export function joinedCells(needed: readonly number[], columns: number, rows: number): JoinedCells {
  const printed = new Set(needed);
  for (;;) {
    const apart = furtherPart(printed, columns, rows);
    if (!apart) break;
    for (const cell of bridge(apart.near, apart.far, columns)) printed.add(cell);
  }
  const hanging = [...printed].sort((a, b) => a - b);
  for (let column = 0; column < columns; column++)
    closeLongGaps(
      printed,
      Array.from({ length: rows }, (_, row) => row * columns + column),
    );
  for (let row = 0; row < rows; row++)
    closeLongGaps(
      printed,
      Array.from({ length: columns }, (_, column) => row * columns + column),
    );
  return { hanging, withRungs: [...printed].sort((a, b) => a - b) };
}

/** The two nearest cells of which one does not hang together with the first; `null` where all do. */
function furtherPart(
  printed: ReadonlySet<number>,
  columns: number,
  rows: number,
): { readonly near: number; readonly far: number } | null {
  const first = Math.min(...printed);
  const reached = new Set([first]);
  for (const cell of reached) {
    const [column, row] = [cell % columns, Math.floor(cell / columns)];
    const around = [
      column > 0 ? cell - 1 : -1,
      column < columns - 1 ? cell + 1 : -1,
      row > 0 ? cell - columns : -1,
      row < rows - 1 ? cell + columns : -1,
    ];
    for (const other of around) if (printed.has(other)) reached.add(other);
  }
  let best: { near: number; far: number; steps: number } | null = null;
  for (const far of printed) {
    if (reached.has(far)) continue;
    for (const near of reached) {
      const across = Math.abs((near % columns) - (far % columns));
      const steps = across + Math.abs(Math.floor(near / columns) - Math.floor(far / columns));
      if (!best || steps < best.steps) best = { near, far, steps };
    }
  }
  return best;
}

/** The cells between two, along the row of the first and then along the column of the second. */
function bridge(near: number, far: number, columns: number): number[] {
  const cells: number[] = [];
  let [column, row] = [near % columns, Math.floor(near / columns)];
  const [toColumn, toRow] = [far % columns, Math.floor(far / columns)];
  while (column !== toColumn || row !== toRow) {
    if (column !== toColumn) column += Math.sign(toColumn - column);
    else row += Math.sign(toRow - row);
    cells.push(row * columns + column);
  }
  return cells;
}

/** Prints each second cell of a gap of two or more between printed ones. */
function closeLongGaps(printed: Set<number>, line: readonly number[]): void {
  let last = -1;
  line.forEach((cell, i) => {
    if (!printed.has(cell)) return;
    if (last >= 0 && i - last > 2) for (let k = last + 2; k < i; k += 2) printed.add(line[k] ?? cell);
    last = i;
  });
}
