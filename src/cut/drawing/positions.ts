import type { Bounds } from '../../geometry/point.ts';
import type { Resolved } from '../shape/resolved.ts';
import { HEIGHT, lettering, type Mark, strokeLine } from './drawing.ts';
import { cornersToAName, signed } from './labels.ts';
import type { Metrics } from './metrics.ts';

/** A line of the list of positions: mark, size, distance from the upright and from the level datum, what it is. */
export type Position = readonly [mark: string, size: string, x: string, y: string, label: string];

/** Every corner and centre, measured from the datums: the template can be marked out from this list alone. */
export function positionsOf({ cuts, origin }: Resolved): Position[] {
  return cuts.flatMap((cut) =>
    cut.stations.map(
      ({ mark, point, size }): Position => [
        mark,
        size,
        signed(point.x - origin.x),
        signed(point.y - origin.y),
        cut.label,
      ],
    ),
  );
}

const ROW = 4.4;
const COLUMNS = [0, 13, 31, 49, 67] as const;

/** Narrower than this, what a mark is would be cut short; the drawing says it too. */
const LABEL_ROOM = 25;

/**
 * From where the list measures, in full: the words say how a datum is found on the panel; and which corners the drawing
 * names, where that is not each.
 */
export function headLines(resolved: Resolved, width: number, metrics: Metrics): readonly string[] {
  const { datums } = resolved;
  const datum = (axis: string): string => datums.find((d) => d.axis === axis)?.label ?? 'zero';
  const from = [`x from: ${datum('vertical')}`, `y from: ${datum('horizontal')}, mm`];
  const pace = cornersToAName(resolved);
  const named = pace > 1 ? [`On the drawing at most 1 corner in ${pace} is named`] : [];
  return [...from, ...named].flatMap((text) => metrics.wrap(text, HEIGHT.small, width));
}

/** How many lines fit a height, mm, below those that say from where they are measured. */
export function rowsIn(height: number, head: readonly string[]): number {
  return Math.max(0, Math.floor((height - head.length * ROW - 4) / ROW));
}

/** The list in a box, from its top. The caller gives no more lines than fit. */
export function positionTable(
  positions: readonly Position[],
  resolved: Resolved,
  box: Bounds,
  metrics: Metrics,
): Mark[] {
  const marks: Mark[] = [];
  const width = box.maxX - box.minX;
  const row = (cells: readonly string[], y: number, bold: boolean): void => {
    cells.forEach((text, i) => {
      const x = box.minX + (COLUMNS[i] ?? 0);
      const room = (i < 4 ? (COLUMNS[i + 1] ?? 0) : width) - (COLUMNS[i] ?? 0) - 1;
      if (text === '' || (i === 4 && room < LABEL_ROOM)) return;
      const right = i === 2 || i === 3;
      // A figure is never cut short.
      const fitted = i === 4 ? metrics.fit(text, HEIGHT.small, room, bold) : text;
      marks.push(
        lettering(fitted, right ? x + room - 1 : x, y, HEIGHT.small, {
          bold,
          anchor: right ? 'end' : 'start',
        }),
      );
    });
  };
  const head = headLines(resolved, width, metrics);
  head.forEach((text, i) => {
    marks.push(lettering(text, box.minX, box.maxY - HEIGHT.small - i * ROW, HEIGHT.small));
  });
  const top = box.maxY - HEIGHT.small - (head.length - 1) * ROW;
  row(['mark', 'size', 'x', 'y', 'what'], top - ROW, true);
  marks.push(strokeLine('thin', box.minX, top - ROW - 1.3, box.maxX, top - ROW - 1.3));
  positions.forEach((position, i) => {
    row(position, top - ROW * (i + 2) - 0.6, false);
  });
  return marks;
}
