import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Mark, Sheet } from '../../src/cut/drawing/drawing.ts';
import { metricsOf } from '../../src/cut/drawing/metrics.ts';
import { resolve } from '../../src/cut/shape/resolve.ts';
import { drawSheets } from '../../src/cut/sheet/sheets.ts';
import type { Bounds, Point } from '../../src/geometry/point.ts';
import { flattenSegment, startOf } from '../../src/geometry/segment.ts';
import type { CutTemplate } from '../../src/model/cut-template.ts';
import { runs } from '../samples.ts';
import { CONTEXT, hole, keepOut, outline, template } from './fixtures.ts';

const metrics = metricsOf(CONTEXT.fonts);
const context = { ...CONTEXT, metrics };

const randomTemplate: fc.Arbitrary<CutTemplate> = fc
  .record({
    x: fc.integer({ min: -150, max: 50 }),
    y: fc.integer({ min: 5, max: 120 }),
    width: fc.integer({ min: 20, max: 330 }),
    height: fc.integer({ min: 20, max: 330 }),
    radius: fc.integer({ min: 0, max: 9 }),
    open: fc.boolean(),
    holes: fc.array(
      fc.record({
        x: fc.integer({ min: -200, max: 250 }),
        y: fc.integer({ min: -60, max: 460 }),
        d: fc.integer({ min: 3, max: 40 }),
      }),
      { maxLength: 8 },
    ),
    out: fc.boolean(),
  })
  .map(({ x, y, width, height, radius, open, holes, out }) =>
    template({
      title: 'Opening',
      outlines: [
        outline(
          [
            [x, y, open ? undefined : radius],
            [x + width, y, open ? undefined : radius],
            [x + width, y + height, radius],
            [x, y + height, radius],
          ].map(([a = 0, b = 0, r]) => (r === undefined ? ([a, b] as const) : ([a, b, r || 1] as const))),
          open ? 'bottom' : null,
        ),
      ],
      holes: holes.map((h) => hole(h.x, h.y, h.d)),
      keepOuts: out
        ? [
            keepOut('Washer hose', [
              [x, y + height + 15],
              [x + width, y + height + 15],
              [x + width, y + height + 30],
              [x, y + height + 30],
            ]),
          ]
        : [],
    }),
  )
  .filter((t) => !resolve(t).findings.some((f) => f.severity === 'error'));

type Text = Extract<Mark, { kind: 'text' }>;

function flat(marks: readonly Mark[]): Mark[] {
  return marks.flatMap((m) => (m.kind === 'clip' ? flat(m.marks) : [m]));
}

interface Stretch {
  readonly ends: [Point, Point];
  /** What lies outside it is not printed. */
  readonly clip: Bounds;
}

const NO_CLIP: Bounds = { minX: -1e9, minY: -1e9, maxX: 1e9, maxY: 1e9 };

/** The cut lines of a sheet as short straight pieces. */
function cutLines(marks: readonly Mark[], clip = NO_CLIP): Stretch[] {
  return marks.flatMap((m): Stretch[] => {
    if (m.kind === 'clip') return cutLines(m.marks, m.to);
    if (m.kind !== 'stroke' || m.line !== 'cut') return [];
    return m.segments.flatMap((s) => {
      const points = [startOf(s), ...flattenSegment(s, 0.05)];
      return points.slice(1).map((to, i): Stretch => ({ ends: [points[i] as Point, to], clip }));
    });
  });
}

/** True where some point of a stretch, taken each 0.1 mm, lies in a box. */
function enters([a, b]: [Point, Point], box: Bounds): boolean {
  if (Math.max(a.x, b.x) < box.minX || Math.min(a.x, b.x) > box.maxX) return false;
  if (Math.max(a.y, b.y) < box.minY || Math.min(a.y, b.y) > box.maxY) return false;
  const steps = Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / 0.1) + 1;
  for (let i = 0; i <= steps; i++) {
    const p = { x: a.x + ((b.x - a.x) * i) / steps, y: a.y + ((b.y - a.y) * i) / steps };
    if (p.x > box.minX && p.x < box.maxX && p.y > box.minY && p.y < box.maxY) return true;
  }
  return false;
}

function overlap(a: Bounds, b: Bounds): Bounds {
  return {
    minX: Math.max(a.minX, b.minX),
    minY: Math.max(a.minY, b.minY),
    maxX: Math.min(a.maxX, b.maxX),
    maxY: Math.min(a.maxY, b.maxY),
  };
}

/** Sides of the upright squares on a sheet whose two diagonals are drawn too. */
function squares(sheet: Sheet): number[] {
  return flat(sheet.marks).flatMap((m) => {
    const [first] = m.kind === 'stroke' ? m.segments : [];
    if (m.kind !== 'stroke' || m.segments.length !== 1 || first?.kind !== 'line') return [];
    const [dx, dy] = [first.to.x - first.from.x, first.to.y - first.from.y];
    return Math.abs(dx) > 40 && Math.abs(dx - Math.abs(dy)) < 1e-9
      ? [Math.round(Math.abs(dx) * 1e6) / 1e6]
      : [];
  });
}

test('no text on a cut line or on other text, and a proof square on the first sheet', () => {
  fc.assert(
    fc.property(randomTemplate, fc.constantFrom('a4' as const, 'letter' as const), (one, paper) => {
      const drawn = drawSheets(resolve(one).resolved, paper, context);
      if (!drawn.ok) throw new Error(`${drawn.needed} sheets`);
      expect(drawn.sheets).toHaveLength(drawn.plan.pages);
      for (const [i, sheet] of drawn.sheets.entries()) {
        const texts = flat(sheet.marks).filter((m): m is Text => m.kind === 'text' && m.text !== '');
        const cuts = cutLines(sheet.marks);
        const boxes = texts.map((t) => metrics.box(t));
        for (const [j, box] of boxes.entries()) {
          const crossing = cuts.find((s) => enters(s.ends, overlap(box, s.clip)));
          if (crossing) throw new Error(`“${texts[j]?.text}” lies on a cut line of sheet ${i + 1}`);
        }
        const labels = boxes.filter((_, j) =>
          /^(x |[A-Z]{1,2}\d* |DATUM|KEEP|K\d|−?\d)/.test(texts[j]?.text ?? ''),
        );
        labels.forEach((a, j) => {
          for (const b of labels.slice(j + 1)) {
            const apart = a.maxX <= b.minX || b.maxX <= a.minX || a.maxY <= b.minY || b.maxY <= a.minY;
            // Lines of one label stand one and a half heights apart, their boxes overlap by a hair.
            const sharesLine = Math.abs(a.minX - b.minX) < 1e-6;
            if (!apart && !sharesLine) throw new Error(`labels overlap on sheet ${i + 1}`);
          }
        });
      }
      // The proof square stands on the first sheet, and is asked for on every other one.
      expect(squares(drawn.sheets[0] as Sheet)).toEqual([100, 100]);
    }),
    runs(20, 200),
  );
}, 240_000);
