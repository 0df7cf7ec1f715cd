/** A point of a glyph: x to the right, y down. */
type Xy = readonly [x: number, y: number];

/** The wide and the narrow line of a glyph, two to one (ISO 128). */
export const WIDE = 1.6;
export const NARROW = 0.8;

/** A closed outline through points, as path data. */
export function outline(points: readonly Xy[]): string {
  return `M${points.map(([x, y]) => `${round(x)} ${round(y)}`).join('L')}Z`;
}

/** The corners of a regular polygon; `first` is the direction of the first corner in degrees, clockwise from the right. */
export function regularCorners(sides: number, radius: number, centre: Xy, first = 0): Xy[] {
  return Array.from({ length: sides }, (_, index) =>
    atBearing(radius, first + (index * 360) / sides, centre),
  );
}

/** A star with as many points as given, between an outer and an inner radius. */
export function star(points: number, outer: number, inner: number, centre: Xy): Xy[] {
  return Array.from({ length: points * 2 }, (_, index) =>
    atBearing(index % 2 === 0 ? outer : inner, (index * 180) / points, centre),
  );
}

/** A point at a distance and a direction, degrees clockwise from the right. */
export function atBearing(radius: number, degrees: number, [x, y]: Xy): Xy {
  const angle = (degrees * Math.PI) / 180;
  return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
}

/**
 * The six-lobed outline of ISO 10664, of arcs that meet as tangents: lobes of radius `lobe`, hollows of the
 * radius that follows from it. `across` is the size over the lobes (A), `hollow` over the hollows (B).
 */
export function hexalobe(across: number, hollow: number, lobe: number, centre: Xy): string {
  const a = across / 2 - lobe;
  const cos30 = Math.sqrt(3) / 2;
  const waist =
    (lobe * lobe - a * a - (hollow * hollow) / 4 + a * cos30 * hollow) / (hollow - 2 * a * cos30 - 2 * lobe);
  const b = hollow / 2 + waist;
  const arcs = Array.from({ length: 6 }, (_, index) => {
    const lobeCentre = atBearing(a, index * 60, centre);
    const before = tangent(lobeCentre, atBearing(b, index * 60 - 30, centre), lobe, waist);
    const after = tangent(lobeCentre, atBearing(b, index * 60 + 30, centre), lobe, waist);
    return { before, after };
  });
  const path = arcs.map(({ before, after }, index) => {
    const begin = index === 0 ? `M${xy(before)}` : `A${round(waist)} ${round(waist)} 0 0 0 ${xy(before)}`;
    return `${begin}A${round(lobe)} ${round(lobe)} 0 0 1 ${xy(after)}`;
  });
  const [first] = arcs;
  return first ? `${path.join('')}A${round(waist)} ${round(waist)} 0 0 0 ${xy(first.before)}Z` : '';
}

/** Where two circles that touch from outside meet. */
function tangent([ax, ay]: Xy, [bx, by]: Xy, a: number, b: number): Xy {
  return [ax + ((bx - ax) * a) / (a + b), ay + ((by - ay) * a) / (a + b)];
}

function xy([x, y]: Xy): string {
  return `${round(x)} ${round(y)}`;
}

function round(value: number): number {
  return Number(value.toFixed(2));
}
