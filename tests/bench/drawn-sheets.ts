import { LINES, type Mark } from '../../src/cut/drawing/drawing.ts';
import { metricsOf } from '../../src/cut/drawing/metrics.ts';
import { resolve } from '../../src/cut/shape/resolve.ts';
import { drawSheets } from '../../src/cut/sheet/sheets.ts';
import type { Point } from '../../src/geometry/point.ts';
import { flattenSegment, startOf } from '../../src/geometry/segment.ts';
import { POINTS_PER_MM } from '../../src/trade/paper.ts';
import { CONTEXT, outline, template } from '../cut/fixtures.ts';
import { sixteen } from './corpus.ts';

/** Straight lines of one kind (width and dashes in mm), `[x1, y1, x2, y2]` in points from the upper left corner. */
export interface Stroked {
  readonly width: number;
  readonly dash: readonly number[];
  readonly lines: readonly (readonly [number, number, number, number])[];
}

/** A text with its size and place in points. */
export interface Written {
  readonly text: string;
  readonly bold: boolean;
  readonly size: number;
  readonly x: number;
  readonly y: number;
}

/** What stands on each A4 sheet of the template of sixteen sheets, as plain numbers. */
export function drawnSheets(): readonly (readonly (Stroked | Written)[])[] {
  const corners = [
    [-sixteen.width / 2, 30, 8],
    [sixteen.width / 2, 30, 8],
    [sixteen.width / 2, 30 + sixteen.height, 8],
    [-sixteen.width / 2, 30 + sixteen.height, 8],
  ] as const;
  const one = template({ outlines: [outline(corners)] });
  const drawn = drawSheets(resolve(one).resolved, 'a4', { ...CONTEXT, metrics: metricsOf(CONTEXT.fonts) });
  if (!drawn.ok || drawn.sheets.length !== 16)
    throw new Error(`the template fills ${drawn.ok ? drawn.sheets.length : drawn.needed} sheets and not 16`);
  return drawn.sheets.map(({ height, marks }) => marks.flatMap((mark) => plain(mark, height)));
}

function plain(mark: Mark, sheetHeight: number): readonly (Stroked | Written)[] {
  const [x, y] = [(mm: number) => mm * POINTS_PER_MM, (mm: number) => (sheetHeight - mm) * POINTS_PER_MM];
  switch (mark.kind) {
    case 'clip':
      return mark.marks.flatMap((inner) => plain(inner, sheetHeight));
    case 'text': {
      const { text, bold, at } = mark;
      return [{ text, bold, size: mark.height * POINTS_PER_MM, x: x(at.x), y: y(at.y) }];
    }
    case 'fill':
      return [{ ...LINES.thin, lines: between(mark.points) }];
    case 'stroke':
      return [
        {
          ...LINES[mark.line],
          lines: mark.segments.flatMap((one) => between([startOf(one), ...flattenSegment(one, 0.05)])),
        },
      ];
    default:
      return mark satisfies never;
  }

  function between(points: readonly Point[]): Stroked['lines'] {
    return points.slice(1).map((to, index) => {
      const from = points[index] ?? to;
      return [x(from.x), y(from.y), x(to.x), y(to.y)];
    });
  }
}
