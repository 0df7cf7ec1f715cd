import fc from 'fast-check';
import { expect, test } from 'vitest';
import { drawTemplate } from '../../src/cut/draw-template.ts';
import { metricsOf } from '../../src/cut/drawing/metrics.ts';
import { resolve } from '../../src/cut/shape/resolve.ts';
import type { Point } from '../../src/geometry/point.ts';
import { flattenSegment, startOf } from '../../src/geometry/segment.ts';
import type { CutTemplate } from '../../src/model/cut-template.ts';
import { runs } from '../samples.ts';
import { CONTEXT, hole, mm, outline, point, span, template } from './fixtures.ts';
import { type InkPage, readSheets } from './read-sheets.ts';

const context = { ...CONTEXT, metrics: metricsOf(CONTEXT.fonts) };

/** The table prints hundredths of a millimetre, and leaves out what is shorter than 0.05 mm. */
const WITHIN = 0.05;

interface Row {
  readonly mark: string;
  readonly size: string;
  readonly at: Point;
}

/** The list of positions as it stands on paper: a mark, perhaps a size, and two numbers on one height. */
function tableOf(pages: readonly InkPage[]): Row[] {
  return pages.flatMap(({ texts }) => {
    const levels = new Map<string, typeof texts>();
    for (const one of texts) {
      const key = one.at.y.toFixed(1);
      levels.set(key, [...(levels.get(key) ?? []), one]);
    }
    return [...levels.values()].flatMap((level): Row[] => {
      const cells = level.toSorted((a, b) => a.at.x - b.at.x).map(({ text }) => text.replace('−', '-'));
      const first = cells.findIndex((text) => /^[A-Z]{1,2}\d*$/.test(text));
      const row = /^([A-Z]{1,2}\d*)\|(?:((?:arc )?r [\d.]+|Ø [\d.]+)\|)?(-?[\d.]+)\|(-?[\d.]+)(?:\||$)/.exec(
        cells.slice(first).join('|'),
      );
      if (first < 0 || !row) return [];
      return [{ mark: row[1] ?? '', size: row[2] ?? '', at: { x: Number(row[3]), y: Number(row[4]) } }];
    });
  });
}

const minus = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });
const away = (from: Point, to: Point, by: number): Point => {
  const way = minus(to, from);
  const long = Math.hypot(way.x, way.y);
  return { x: from.x + (way.x * by) / long, y: from.y + (way.y * by) / long };
};

/** The circle through three points, as a fabricator's beam compass strikes it, in small steps from first to last. */
function struck(a: Point, b: Point, c: Point): Point[] {
  const [p, q] = [minus(b, a), minus(c, a)];
  const d = 2 * (p.x * q.y - p.y * q.x);
  if (Math.abs(d) < 1e-9) return [c];
  const [pp, qq] = [p.x ** 2 + p.y ** 2, q.x ** 2 + q.y ** 2];
  const centre = { x: a.x + (q.y * pp - p.y * qq) / d, y: a.y + (p.x * qq - q.x * pp) / d };
  const radius = Math.hypot(a.x - centre.x, a.y - centre.y);
  const angle = ({ x, y }: Point): number => Math.atan2(y - centre.y, x - centre.x);
  const turn = (from: number, to: number): number => {
    const full = 2 * Math.PI;
    const left = (((to - from) % full) + full) % full;
    return d > 0 ? left : left - full;
  };
  const sweep = turn(angle(a), angle(c));
  return Array.from({ length: 200 }, (_, i) => {
    const at = angle(a) + (sweep * (i + 1)) / 200;
    return { x: centre.x + radius * Math.cos(at), y: centre.y + radius * Math.sin(at) };
  });
}

/** The line to cut, drawn again by hand from the rows of one outline; a closed one comes back to its beginning. */
function rebuilt(rows: readonly Row[], closed: boolean): Point[] {
  const line: Point[] = [];
  rows.forEach(({ size, at }, i) => {
    const wrap = (k: number): Row | undefined => (closed ? rows.at(k % rows.length) : rows[k]);
    const [before, after] = [i > 0 || closed ? rows.at(i - 1) : undefined, wrap(i + 1)];
    if (size.startsWith('r ') && before && after) {
      const radius = Number(size.slice(2));
      const [u, v] = [minus(before.at, at), minus(after.at, at)];
      const angle = Math.acos((u.x * v.x + u.y * v.y) / (Math.hypot(u.x, u.y) * Math.hypot(v.x, v.y)));
      const reach = radius / Math.tan(angle / 2);
      const [from, to] = [away(at, before.at, reach), away(at, after.at, reach)];
      const bisector = away(at, away(from, to, Math.hypot(from.x - to.x, from.y - to.y) / 2), 1);
      const middle = away(at, bisector, radius / Math.sin(angle / 2) - radius);
      line.push(from, ...struck(from, middle, to));
    } else if (size.startsWith('arc') && before && after) {
      line.push(...struck(before.at, at, after.at));
    } else line.push(at);
  });
  return closed && line[0] ? [...line, line[0]] : line;
}

function offLine(point: Point, line: readonly Point[]): number {
  return Math.min(
    ...line.slice(1).map((to, i) => {
      const from = line[i] ?? to;
      const [way, rest] = [minus(to, from), minus(point, from)];
      const length = way.x ** 2 + way.y ** 2;
      const t = length === 0 ? 0 : Math.min(1, Math.max(0, (rest.x * way.x + rest.y * way.y) / length));
      return Math.hypot(rest.x - way.x * t, rest.y - way.y * t);
    }),
  );
}

const wanted: fc.Arbitrary<CutTemplate> = fc
  .record({
    x: fc.double({ min: -120, max: 60, noNaN: true }),
    y: fc.double({ min: -40, max: 60, noNaN: true }),
    width: fc.integer({ min: 60, max: 130 }),
    height: fc.integer({ min: 50, max: 120 }),
    slant: fc.integer({ min: 0, max: 25 }),
    radius: fc.integer({ min: 0, max: 14 }),
    open: fc.boolean(),
    bow: fc.integer({ min: 0, max: 12 }),
    setBack: fc.constantFrom(0, 0.5, 3),
    join: fc.constantFrom('round' as const, 'mitre' as const),
    curve: fc.constantFrom(null, 400, 900),
    axis: fc.constantFrom('vertical' as const, 'horizontal' as const),
    side: fc.constantFrom(null, 'each' as const),
  })
  .map(({ x, y, width, height, slant, radius, open, bow, setBack, join, curve, axis, side }) => {
    const r = radius > 0 ? radius : undefined;
    const at = (cx: number, cy: number, round: number | undefined = r) =>
      round === undefined ? ([cx, cy] as const) : ([cx, cy, round] as const);
    const corners: (readonly [number, number, number?])[] = [
      open ? [x, y] : at(x, y),
      open ? [x + width, y] : at(x + width, y),
      at(x + width - slant, y + height),
      at(x, y + height),
    ];
    return template({
      side,
      outlines: [outline(corners, open ? 'bottom' : null)],
      arcs:
        bow > 0
          ? [
              {
                from: point(x + width - slant, y + height),
                through: point(x + (width - slant) / 2, y + height + bow),
                to: point(x, y + height),
                when: null,
                at: span(500),
              },
            ]
          : [],
      holes: [hole(x - 40, y, 8.5)],
      setBack: setBack > 0 ? { value: mm(setBack), at: span(14) } : null,
      join,
      curveRadius: curve === null ? null : { value: mm(curve), at: span(15) },
      curveAxis: axis,
    });
  })
  .filter((one) => !resolve(one).findings.some(({ severity }) => severity === 'error'));

test('the cut drawn again from the printed table is the line on the sheet', async () => {
  await fc.assert(
    fc.asyncProperty(wanted, async (one) => {
      const { sides } = await drawTemplate(one, { ...context, papers: ['a3'] });
      expect(sides.length).toBeGreaterThan(0);
      const { resolved } = resolve(one);
      for (const { side, files } of sides) {
        const file = files.find(({ name }) => name.endsWith('.pdf'));
        const rows = tableOf(await readSheets(file?.bytes ?? new Uint8Array()));
        // Mirrored by hand, as the sheet says that the right one is.
        const hand = side === 'right' ? -1 : 1;
        for (const cut of resolved.cuts) {
          const own = rows.filter(({ mark }) => mark.replace(/\d+$/, '') === cut.mark);
          if (cut.kind === 'hole') {
            const [row] = own;
            const [centre] = cut.stations;
            expect(row?.size).toBe('Ø 8.5');
            expect(Math.abs((row?.at.x ?? 1e9) - hand * (centre?.point.x ?? 0))).toBeLessThan(WITHIN);
            continue;
          }
          const drawn = cut.cut.segments
            .flatMap((segment) => [startOf(segment), ...flattenSegment(segment, 0.002)])
            .map((p) => ({ x: hand * p.x, y: p.y }));
          const again = rebuilt(own, cut.cut.closed);
          const off = Math.max(
            ...drawn.map((p) => offLine(p, again)),
            ...again.map((p) => offLine(p, drawn)),
          );
          if (!(off < WITHIN)) throw new Error(`${off.toFixed(3)} mm off, ${JSON.stringify(own)}`);
        }
      }
    }),
    { ...runs(4, 300), endOnFailure: true },
  );
}, 600_000);
