import type { Contour } from './contour.ts';
import type { Point } from './point.ts';
import { arc, line, reversed, type Segment } from './segment.ts';

/** A movement that keeps lengths: mirror in the y axis if asked, then turn, then shift. */
export interface Move {
  readonly mirror: boolean;
  /** Degrees, counter-clockwise. */
  readonly turn: number;
  readonly shift: Point;
}

export const STAY: Move = { mirror: false, turn: 0, shift: { x: 0, y: 0 } };

export function translation(x: number, y: number): Move {
  return { mirror: false, turn: 0, shift: { x, y } };
}

export function rotation(turn: number): Move {
  return { mirror: false, turn, shift: { x: 0, y: 0 } };
}

/** Left becomes right about the line x = 0. */
export const MIRROR: Move = { mirror: true, turn: 0, shift: { x: 0, y: 0 } };

/** Cosine and sine, exact for quarter turns so that upright edges stay upright. */
function turnOf(degrees: number): readonly [number, number] {
  const quarters = degrees / 90;
  if (Number.isInteger(quarters)) {
    const q = ((quarters % 4) + 4) % 4;
    return [[1, 0, -1, 0][q] ?? 1, [0, 1, 0, -1][q] ?? 0];
  }
  const angle = (degrees * Math.PI) / 180;
  return [Math.cos(angle), Math.sin(angle)];
}

export function movePoint(point: Point, move: Move): Point {
  const [cos, sin] = turnOf(move.turn);
  const x = move.mirror ? -point.x : point.x;
  return { x: x * cos - point.y * sin + move.shift.x, y: x * sin + point.y * cos + move.shift.y };
}

export function moveSegment(segment: Segment, move: Move): Segment {
  if (segment.kind === 'line') return line(movePoint(segment.from, move), movePoint(segment.to, move));
  const turn = (move.turn * Math.PI) / 180;
  const start = move.mirror ? Math.PI - segment.start : segment.start;
  const sweep = move.mirror ? -segment.sweep : segment.sweep;
  return arc(movePoint(segment.centre, move), segment.radius, start + turn, sweep);
}

/** Moves a contour. A mirrored one is run backwards, so that it still turns the way it turned. */
export function moveContour(contour: Contour, move: Move): Contour {
  const moved = contour.segments.map((segment) => moveSegment(segment, move));
  if (!move.mirror) return { closed: contour.closed, segments: moved };
  return {
    closed: contour.closed,
    segments: moved.toReversed().map(reversed),
  };
}
