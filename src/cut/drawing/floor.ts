import { type Bounds, boundsMeet, grow, type Point } from '../../geometry/point.ts';
import { flattenSegment, type Segment, startOf } from '../../geometry/segment.ts';

/** What is already drawn on a sheet, so that lettering can be put where nothing is. */
export interface Floor {
  /** Keeps lettering off some lines. */
  readonly blockLines: (segments: readonly Segment[]) => void;
  readonly blockBox: (box: Bounds) => void;
  /** True where a box keeps 0.7 mm from all that is drawn, and lies within the floor. */
  readonly isFree: (box: Bounds) => boolean;
  /** True where a straight line touches no blocked line and no box. */
  readonly isClear: (from: Point, to: Point) => boolean;
  /** True where a straight line runs through no lettering; it may cross other lines. */
  readonly runsClear: (from: Point, to: Point) => boolean;
}

const GAP = 0.7;
const CELL = 8;

/** The name of a cell by its column and row. */
const cellAt = (x: number, y: number): number => x * 4096 + y;

type Stretch = readonly [Point, Point];

/** An empty floor of a size. */
export function floorOf(bounds: Bounds): Floor {
  const lines = new Map<number, Stretch[]>();
  const boxes: Bounds[] = [];
  // Asked for thousands of places on a sheet, so the lines near each are looked at where they are and not gathered.
  const anyNear = (b: Bounds, is: (stretch: Stretch) => boolean): boolean => {
    for (let x = Math.floor(b.minX / CELL); x <= Math.floor(b.maxX / CELL); x++) {
      for (let y = Math.floor(b.minY / CELL); y <= Math.floor(b.maxY / CELL); y++) {
        if (lines.get(cellAt(x, y))?.some(is)) return true;
      }
    }
    return false;
  };
  const put = (stretch: Stretch): void => {
    const box = stretchBox(stretch);
    if (!boundsMeet(box, bounds)) return;
    const b = clampTo(box, bounds);
    for (let x = Math.floor(b.minX / CELL); x <= Math.floor(b.maxX / CELL); x++) {
      for (let y = Math.floor(b.minY / CELL); y <= Math.floor(b.maxY / CELL); y++) {
        const known = lines.get(cellAt(x, y));
        if (known) known.push(stretch);
        else lines.set(cellAt(x, y), [stretch]);
      }
    }
  };
  return {
    blockLines: (segments) => {
      for (const segment of segments) {
        let from = startOf(segment);
        for (const to of flattenSegment(segment, 0.05)) {
          put([from, to]);
          from = to;
        }
      }
    },
    blockBox: (box) => void boxes.push(box),
    isFree: (box) => {
      const wide = grow(box, GAP);
      const within =
        box.minX >= bounds.minX &&
        box.maxX <= bounds.maxX &&
        box.minY >= bounds.minY &&
        box.maxY <= bounds.maxY;
      return within && !boxes.some((b) => boundsMeet(b, wide)) && !anyNear(wide, (s) => crossesBox(s, wide));
    },
    runsClear: (from, to) => !boxes.some((b) => crossesBox([from, to], grow(b, GAP / 2))),
    isClear: (from, to) => {
      const box = stretchBox([from, to]);
      return (
        !boxes.some((b) => boundsMeet(b, box) && crossesBox([from, to], b)) &&
        !anyNear(box, (s) => boundsMeet(stretchBox(s), box) && stretchesCross(s, [from, to]))
      );
    },
  };
}

function stretchBox([a, b]: Stretch): Bounds {
  return {
    minX: Math.min(a.x, b.x),
    minY: Math.min(a.y, b.y),
    maxX: Math.max(a.x, b.x),
    maxY: Math.max(a.y, b.y),
  };
}

function clampTo(b: Bounds, to: Bounds): Bounds {
  return {
    minX: Math.max(b.minX, to.minX),
    minY: Math.max(b.minY, to.minY),
    maxX: Math.min(b.maxX, to.maxX),
    maxY: Math.min(b.maxY, to.maxY),
  };
}

/** Clips a stretch to a box, side by side; what is left lies in the box. */
function crossesBox([a, b]: Stretch, box: Bounds): boolean {
  // Most stretches lie beyond one side, which is quicker to see.
  if (
    (a.x < box.minX && b.x < box.minX) ||
    (a.x > box.maxX && b.x > box.maxX) ||
    (a.y < box.minY && b.y < box.minY) ||
    (a.y > box.maxY && b.y > box.maxY)
  )
    return false;
  let [enter, leave] = [0, 1];
  const sides: [number, number, number][] = [
    [b.x - a.x, box.minX - a.x, box.maxX - a.x],
    [b.y - a.y, box.minY - a.y, box.maxY - a.y],
  ];
  for (const [along, low, high] of sides) {
    if (Math.abs(along) < 1e-12) {
      if (low > 0 || high < 0) return false;
      continue;
    }
    const [first, second] = [low / along, high / along];
    enter = Math.max(enter, Math.min(first, second));
    leave = Math.min(leave, Math.max(first, second));
  }
  return enter <= leave;
}

/** For stretches whose boxes meet; those on one line count as crossing. */
function stretchesCross([a, b]: Stretch, [c, d]: Stretch): boolean {
  const side = (p: Point, q: Point, r: Point): number =>
    (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  return side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0;
}
