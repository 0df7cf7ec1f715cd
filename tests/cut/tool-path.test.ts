import {
  areaPathsD,
  EndType,
  FillRule,
  inflatePathsD,
  intersectD,
  JoinType,
  type PathsD,
  unionD,
  xorD,
} from 'clipper2-ts';
import { describe, expect, test } from 'vitest';
import { resolve } from '../../src/cut/shape/resolve.ts';
import { area, flatten, perimeter } from '../../src/geometry/contour.ts';
import { directionAt, startOf } from '../../src/geometry/segment.ts';
import type { CutTemplate } from '../../src/model/cut-template.ts';
import { hole, NOTCH, OPENING, outline, span, template } from './fixtures.ts';

const cutter = (diameter: number, one: CutTemplate, radius = diameter / 2): CutTemplate =>
  ({
    ...one,
    cutterRadius: { value: radius, at: span(12) },
    cutterDiameter: { value: diameter, at: span(12) },
  }) as unknown as CutTemplate;

/** A round-cornered plate, upright or leaning, that is open at the panel's lower edge. */
const leaning = template({
  outlines: [
    outline(
      [
        [-40, 0],
        [50, 0],
        [35, 45, 8],
        [-55, 45, 8],
      ],
      'bottom',
    ),
  ],
});

/** Area in which what a round cutter takes away, and what it cuts loose, differs from the waste: by clipper2. */
function difference(one: CutTemplate, diameter: number): number {
  const cut = resolve(one).resolved.cuts.find(({ kind }) => kind === 'outline');
  if (!cut?.toolPath) throw new Error('no path');
  const path = flatten(cut.toolPath, 1e-3);
  const swept = inflatePathsD(
    [path],
    diameter / 2,
    JoinType.Round,
    cut.toolPath.closed ? EndType.Joined : EndType.Round,
    2,
    5,
    1e-3,
  );
  const taken = unionD(swept, [path], FillRule.NonZero, 5);
  const waste: PathsD = [flatten(cut.area, 1e-3)];
  // Off the panel's edge there is only air.
  const panel: PathsD = [[-500, 500].flatMap((x) => (x < 0 ? [0, 500] : [500, 0]).map((y) => ({ x, y })))];
  const onPanel = cut.edge ? intersectD(taken, panel, FillRule.NonZero, 5) : taken;
  return Math.abs(areaPathsD(xorD(onPanel, waste, FillRule.NonZero, 5)));
}

describe('what the cutter takes away is the waste', () => {
  test.each([
    ['a notch at the panel’s edge', NOTCH, 6],
    ['a leaning notch', leaning, 6],
    ['a wide cutter on it', leaning, 12],
    ['an opening', OPENING, 3],
  ])('%s', (_, one, diameter) => {
    const made = cutter(diameter, one);
    const whole = resolve(made).resolved.cuts.find(({ kind }) => kind === 'outline');
    if (!whole) throw new Error('no outline');
    expect(difference(made, diameter)).toBeLessThan(0.005 * perimeter(whole.area));
    expect(area(whole.area)).toBeGreaterThan(100);
  });
});

test('how a jigsaw turns does not shift the path of its thin blade', () => {
  const [thin, wide] = [cutter(1, OPENING, 0.5), cutter(1, OPENING, 20)].map(
    (one) => resolve(one).resolved.cuts.find(({ kind }) => kind === 'outline')?.toolPath,
  );
  expect(thin).toBeTruthy();
  expect(wide).toEqual(thin);
});

test('a cutter whose width is not said has no path', () => {
  const one = { ...OPENING, cutterRadius: cutter(6, OPENING).cutterRadius, cutterDiameter: null };
  expect(resolve(one).resolved.cuts.every(({ toolPath }) => toolPath === null)).toBe(true);
});

test('a closed path begins in the middle of its longest side, an open one beyond the panel’s edge', () => {
  const path = (one: CutTemplate) => resolve(cutter(6, one)).resolved.cuts[0]?.toolPath;
  const [closed, open] = [path(OPENING), path(NOTCH)];
  const [first, last] = [closed?.segments[0], closed?.segments.at(-1)];
  if (!first || !last || !open?.segments[0]) throw new Error('no path');
  expect(directionAt(first, 0)).toEqual(directionAt(last, 1));
  expect(first.kind).toBe('line');
  expect(open.closed).toBe(false);
  expect(startOf(open.segments[0]).y).toBeLessThan(-3);
});

test('a hole in the waste is where the saw starts; one across the line is a clash', () => {
  const plate = outline([
    [-40, 20, 5],
    [40, 20, 5],
    [40, 60, 5],
    [-40, 60, 5],
  ]);
  const codes = (x: number): string[] =>
    resolve(template({ outlines: [plate], holes: [hole(x, 40, 10)] })).findings.map(({ code }) => code);
  expect(codes(0)).toEqual([]);
  expect(codes(38)).toEqual(['cut-features-coincide']);
});
