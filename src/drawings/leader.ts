/** A point in the units of a drawing: x to the right, y down. */
export interface DrawingPoint {
  readonly x: number;
  readonly y: number;
}

/** A straight leader line, from its letter to what it points at. */
export interface Leader {
  readonly from: DrawingPoint;
  readonly to: DrawingPoint;
}

/** The straight distance between two points. */
export function distance(a: DrawingPoint, b: DrawingPoint): number {
  return Math.sqrt((a.x - b.x) ** 2 + (a.y - b.y) ** 2);
}

/** How far a point lies from a leader. */
export function distanceToLeader(point: DrawingPoint, { from, to }: Leader): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const along = dx * dx + dy * dy;
  const share = along === 0 ? 0 : ((point.x - from.x) * dx + (point.y - from.y) * dy) / along;
  const nearest = Math.max(0, Math.min(1, share));
  return distance(point, { x: from.x + nearest * dx, y: from.y + nearest * dy });
}

/** Whether two leaders cross or touch. Leaders to the very same point do not. */
export function leadersCross(a: Leader, b: Leader): boolean {
  if (a.to.x === b.to.x && a.to.y === b.to.y) return false;
  const sides = [turn(a, b.from), turn(a, b.to), turn(b, a.from), turn(b, a.to)];
  const [bFrom = 0, bTo = 0, aFrom = 0, aTo = 0] = sides;
  if (bFrom * bTo < 0 && aFrom * aTo < 0) return true;
  return (
    (bFrom === 0 && distanceToLeader(b.from, a) === 0) ||
    (bTo === 0 && distanceToLeader(b.to, a) === 0) ||
    (aFrom === 0 && distanceToLeader(a.from, b) === 0) ||
    (aTo === 0 && distanceToLeader(a.to, b) === 0)
  );
}

/** Positive, negative or zero as a point lies on one side of a leader, the other, or in line with it. */
function turn({ from, to }: Leader, point: DrawingPoint): number {
  return (to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x);
}
