import { polygon } from '../../geometry/corners.ts';
import type { Bounds, Point } from '../../geometry/point.ts';
import { line } from '../../geometry/segment.ts';
import { HEIGHT, lettering, type Mark, stroke, strokeBox, strokeLine } from '../drawing/drawing.ts';

/** A square of a side in mm, with both diagonals: two equal diagonals say that the paper went in straight. */
export function proofSquare(corner: Point, side: number): Mark[] {
  const { x, y } = corner;
  return [
    strokeBox('thin', { minX: x, minY: y, maxX: x + side, maxY: y + side }),
    strokeLine('thin', x, y, x + side, y + side),
    strokeLine('thin', x, y + side, x + side, y),
  ];
}

/** ISO/IEC 7810 ID-1, the size of every bank card, mm; its corners are rounded by 3.18 mm. */
const BANK_CARD = { width: 85.6, height: 53.98, radius: 3.18 } as const;

/** The outline of a bank card with its lower left corner at a point. */
export function bankCard({ x, y }: Point): Mark {
  const { width, height, radius } = BANK_CARD;
  const corners = [
    { point: { x, y }, radius },
    { point: { x: x + width, y }, radius },
    { point: { x: x + width, y: y + height }, radius },
    { point: { x, y: y + height }, radius },
  ];
  return stroke('thin', ...polygon(corners).segments);
}

/** Which way the ticks of a ruler point, away from its base line. */
type RulerSide = 'below' | 'above' | 'left' | 'right';

/**
 * A ruler along one side of a rectangle: its base line lies on that side, zero at the left or at the bottom.
 * In millimetres with figures each centimetre, or in inches divided by 16 with figures each inch; a slim one takes
 * less than 5 mm.
 */
export function ruler(along: Bounds, side: RulerSide, unit: 'mm' | 'in', slim = false): Mark[] {
  const [short, figures] = slim ? [0.7, 2.5] : [1, 3.6];
  const level = side === 'below' || side === 'above';
  const length = level ? along.maxX - along.minX : along.maxY - along.minY;
  const outward = side === 'below' || side === 'left' ? -1 : 1;
  const base = { below: along.minY, above: along.maxY, left: along.minX, right: along.maxX }[side];
  const at = (distance: number, out: number): Point =>
    level
      ? { x: along.minX + distance, y: base + outward * out }
      : { x: base + outward * out, y: along.minY + distance };
  const step = unit === 'mm' ? 1 : 25.4 / 16;
  const ticks = Array.from({ length: Math.floor(length / step + 1e-6) + 1 }, (_, i) => i);
  const marks: Mark[] = [
    stroke('thin', line(at(0, 0), at(length, 0))),
    stroke('hatch', ...ticks.map((i) => line(at(i * step, 0), at(i * step, short * tickLength(i, unit))))),
  ];
  const each = unit === 'mm' ? 10 : 16;
  for (const i of ticks) {
    const distance = i * step;
    if (i % each !== 0 || distance < 3 || distance > length - 3) continue;
    const text = String(unit === 'mm' ? i : i / 16);
    // Capitals stand beyond the ticks, whichever way these point.
    const p = at(distance, level ? (outward > 0 ? figures : figures + HEIGHT.ruler) : figures);
    marks.push(
      level
        ? lettering(text, p.x, p.y, HEIGHT.ruler, { anchor: 'middle' })
        : lettering(text, p.x + (outward > 0 ? HEIGHT.ruler : 0), p.y, HEIGHT.ruler, {
            anchor: 'middle',
            turn: 90,
          }),
    );
  }
  const name = at(1.2, level ? (outward > 0 ? figures : figures + HEIGHT.ruler) : figures);
  marks.push(
    lettering(unit, name.x + (level ? 0 : outward > 0 ? HEIGHT.ruler : 0), name.y, HEIGHT.ruler, {
      turn: level ? 0 : 90,
    }),
  );
  return marks;
}

function tickLength(i: number, unit: 'mm' | 'in'): number {
  if (unit === 'mm') return i % 10 === 0 ? 3 : i % 5 === 0 ? 2.2 : 1.4;
  return i % 16 === 0 ? 3 : i % 8 === 0 ? 2.4 : i % 4 === 0 ? 1.9 : i % 2 === 0 ? 1.4 : 0.9;
}
