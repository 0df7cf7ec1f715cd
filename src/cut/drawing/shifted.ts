import type { Bounds } from '../../geometry/point.ts';
import type { Segment } from '../../geometry/segment.ts';

/** A segment seen from the lower left corner of some bounds: a picture's zero is its own corner. Millimetres. */
export function shifted(segment: Segment, { minX, minY }: Bounds): Segment {
  const move = ({ x, y }: { x: number; y: number }): { x: number; y: number } => ({
    x: x - minX,
    y: y - minY,
  });
  return segment.kind === 'line'
    ? { ...segment, from: move(segment.from), to: move(segment.to) }
    : { ...segment, centre: move(segment.centre) };
}
