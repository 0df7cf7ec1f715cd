import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawTemplate } from '../../src/cut/draw-template.ts';
import { metricsOf } from '../../src/cut/drawing/metrics.ts';
import { resolve } from '../../src/cut/shape/resolve.ts';
import { layoutOf } from '../../src/cut/sheet/layout.ts';
import type { Bounds, Point } from '../../src/geometry/point.ts';
import type { CutTemplate, SheetPlan, SheetTile } from '../../src/model/cut-template.ts';
import { PAPERS, type PaperName } from '../../src/trade/paper.ts';
import { runs } from '../samples.ts';
import { CONTEXT, hole, keepOut, mm, OPENING, outline, span, template } from './fixtures.ts';
import { type InkPage, type InkPath, type InkText, readSheets } from './read-sheets.ts';

const context = { ...CONTEXT, metrics: metricsOf(CONTEXT.fonts) };

/** What the brief of this test asks of a place that is worked out from ink alone, mm. */
const WITHIN = 0.05;

interface Wanted {
  readonly template: CutTemplate;
  readonly paper: PaperName;
}

const wanted: fc.Arbitrary<Wanted> = fc
  .record({
    x: fc.integer({ min: -600, max: 500 }),
    y: fc.integer({ min: -300, max: 400 }),
    width: fc.integer({ min: 30, max: 420 }),
    height: fc.integer({ min: 30, max: 420 }),
    radius: fc.integer({ min: 0, max: 14 }),
    setBack: fc.constantFrom(0, 0.5, 2),
    holes: fc.array(
      fc.record({
        x: fc.integer({ min: -80, max: 80 }),
        d: fc.integer({ min: 4, max: 24 }),
      }),
      { maxLength: 4 },
    ),
    side: fc.constantFrom(null, 'left' as const, 'right' as const),
    behind: fc.boolean(),
    paper: fc.constantFrom<PaperName>('a4', 'letter', 'a3', 'tabloid', 'single'),
  })
  .map(({ x, y, width, height, radius, setBack, holes, side, behind, paper }) => ({
    paper,
    template: template({
      title: 'Opening',
      side,
      setBack: setBack === 0 ? null : { value: mm(setBack), at: span(14) },
      outlines: [
        outline(
          [
            [x, y],
            [x + width, y],
            [x + width, y + height],
            [x, y + height],
          ].map(([a = 0, b = 0]) => (radius > 0 ? ([a, b, radius] as const) : ([a, b] as const))),
        ),
      ],
      holes: holes.map((h, i) => hole(x + width / 2 + h.x, y - 30 - i * 40, h.d)),
      keepOuts: behind
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
  }))
  .filter((w) => !resolve(w.template).findings.some((f) => f.severity === 'error'));

const isDash = (dash: readonly number[], ...like: number[]): boolean =>
  dash.length === like.length && dash.every((v, i) => Math.abs(v - (like[i] ?? 0)) < 1e-6);

/** Long-dash dot lines (ISO 128-2, 04.1) that are level or upright, and long. */
function longCentreLines(page: InkPage, upright: boolean): number[] {
  return page.paths
    .filter(({ dash }) => isDash(dash, 6, 0.75, 0.13, 0.75))
    .flatMap(({ lines }) => lines)
    .filter(([a, b]) => (upright ? Math.abs(a.x - b.x) < 1e-3 : Math.abs(a.y - b.y) < 1e-3))
    .filter(([a, b]) => Math.hypot(a.x - b.x, a.y - b.y) > 60)
    .map(([a]) => (upright ? a.x : a.y));
}

interface Phrase {
  readonly text: string;
  readonly places: readonly Point[];
}

/** What is written on a page, each line alone and together with the one to four that follow it. */
function phrasesOf({ texts }: InkPage): Phrase[] {
  return texts.flatMap((_, i) =>
    [1, 2, 3, 4, 5].map((count) => {
      const lines = texts.slice(i, i + count);
      return {
        text: lines.map(({ text }) => text).join(' '),
        places: lines.flatMap(({ at, end }) => [at, end, { x: (at.x + end.x) / 2, y: (at.y + end.y) / 2 }]),
      };
    }),
  );
}

/** Where the template's zero lies on a page, from the words beside its reference lines and nothing else. */
function zeroOf(page: InkPage): Point {
  const along = (upright: boolean): number => {
    const [axis, label] = upright ? ['x', 'Vehicle centreline'] : ['y', 'Lower edge of the cover'];
    const datum = new RegExp(`^DATUM (${label} )?\\(?${axis} = (-?[\\d.]+)\\)?$`);
    const parallel = new RegExp(
      `^This line is ([\\d.]+) mm (left of|right of|above|below) the datum: ${label}$`,
    );
    const short = new RegExp(`^([\\d.]+) mm (left of|right of|above|below) datum ${axis}$`);
    const lines = longCentreLines(page, upright);
    for (const { text, places } of phrasesOf(page)) {
      const away = parallel.exec(text) ?? short.exec(text);
      const own = datum.exec(text);
      if (!away && !own) continue;
      const value = own
        ? Number(own[2])
        : Number(away?.[1]) * (away?.[2] === 'left of' || away?.[2] === 'below' ? -1 : 1);
      const near = places.flatMap((p) =>
        lines.map((line) => ({ line, off: Math.abs((upright ? p.x : p.y) - line) })),
      );
      const line = near.toSorted((a, b) => a.off - b.off)[0];
      if (line && line.off < 6) return line.line - value;
    }
    throw new Error(`no named ${upright ? 'upright' : 'level'} reference on page “${page.label}”`);
  };
  return { x: along(true), y: along(false) };
}

/** Whether the arrow that points up does so on the sheet too; on a drawing turned on its side it lies. */
function isTurned(page: InkPage): boolean {
  const up = page.texts.find(({ text }) => text === 'UP');
  const shaft = page.paths
    .flatMap(({ lines }) => lines)
    .find(
      ([a, b]) =>
        up &&
        Math.abs(Math.hypot(a.x - b.x, a.y - b.y) - 10.5) < 0.6 &&
        Math.hypot((a.x + b.x - up.at.x - up.end.x) / 2, (a.y + b.y) / 2 - up.at.y) < 12,
    );
  if (!shaft) throw new Error(`no arrow on page “${page.label}”`);
  return Math.abs(shaft[0].y - shaft[1].y) < 1e-3;
}

/** A page turned so that up on the vehicle is up. */
function upright(page: InkPage): InkPage {
  const turn = ({ x, y }: Point): Point => ({ x: y, y: page.width - x });
  return {
    ...page,
    width: page.height,
    height: page.width,
    paths: page.paths.map((path) => ({
      ...path,
      points: path.points.map(turn),
      lines: path.lines.map(([a, b]) => [turn(a), turn(b)] as const),
    })),
    texts: page.texts.map((text) => ({ ...text, at: turn(text.at), end: turn(text.end) })),
  };
}

/** The ruled window of a sheet, and what is seen of it when the set is joined: no words are needed beyond its seams. */
function windowOf(page: InkPage): { window: Bounds; trimmed: Bounds } {
  const ruled = page.paths
    .filter(({ width, dash }) => width === 0.25 && dash.length === 0)
    .flatMap(({ lines }) => lines)
    .filter(([a, b]) => Math.hypot(a.x - b.x, a.y - b.y) > 100);
  const at = (axis: 'x' | 'y'): number[] =>
    ruled.filter(([a, b]) => Math.abs(a[axis] - b[axis]) < 1e-3).map(([a]) => a[axis]);
  const [xs, ys] = [at('x'), at('y')];
  const window = {
    minX: Math.min(...xs),
    minY: Math.min(...ys),
    maxX: Math.max(...xs),
    maxY: Math.max(...ys),
  };
  const trimmed = { ...window };
  const seams = page.paths.filter(({ dash }) => isDash(dash, 3, 0.75)).flatMap(({ lines }) => lines);
  for (const [a, b] of seams) {
    // A seam runs near the edge beyond which the sheet is trimmed, or covered by its neighbour.
    const axis = Math.abs(a.x - b.x) < 1e-3 ? 'X' : 'Y';
    const at = axis === 'X' ? a.x : a.y;
    const [low, high] = [at - window[`min${axis}`], window[`max${axis}`] - at];
    trimmed[`${low < high ? 'min' : 'max'}${axis}`] = at;
  }
  return { window, trimmed };
}

/** Continuous wide lines (ISO 128-2, 01.2): what is cut. */
function cutPaths(page: InkPage): InkPath[] {
  return page.paths.filter(({ width, dash }) => Math.abs(width - 0.5) < 1e-6 && dash.length === 0);
}

/** Each hole and slot is a path of its own within the strokes of a page; a closed run of curves. */
function roundsOf(page: InkPage): { centre: Point; diameter: number }[] {
  return cutPaths(page).flatMap(({ points }) => {
    const runs: Point[][] = [];
    for (const p of points) {
      const last = runs.at(-1);
      const first = last?.[0];
      const closed =
        last &&
        first &&
        last.length > 4 &&
        Math.hypot(first.x - (last.at(-1)?.x ?? 0), first.y - (last.at(-1)?.y ?? 0)) < 1e-3;
      if (!last || closed) runs.push([p]);
      else last.push(p);
    }
    return runs.flatMap((run) => {
      const [xs, ys] = [run.map((p) => p.x), run.map((p) => p.y)];
      const [wide, high] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
      if (Math.abs(wide - high) > 0.01 || run.length < 12) return [];
      const centre = {
        x: (Math.max(...xs) + Math.min(...xs)) / 2,
        y: (Math.max(...ys) + Math.min(...ys)) / 2,
      };
      return run.every((p) => Math.abs(Math.hypot(p.x - centre.x, p.y - centre.y) - wide / 2) < 0.01)
        ? [{ centre, diameter: wide }]
        : [];
    });
  });
}

/** The same as the plan has it: nothing of a sheet of its own is trimmed. */
function frameOf(plan: SheetPlan, tile: SheetTile): { window: Bounds; trimmed: Bounds } {
  if (plan.oneSheet || plan.paper === 'single') {
    const all = { minX: 0, minY: 0, maxX: plan.width, maxY: plan.height };
    return { window: all, trimmed: all };
  }
  const { window } = layoutOf(PAPERS[plan.paper as 'a4'], tile.landscape);
  const left = window.minX + tile.trimmed.x - tile.window.x;
  const low = window.minY + tile.trimmed.y - tile.window.y;
  return {
    window,
    trimmed: { minX: left, minY: low, maxX: left + tile.trimmed.width, maxY: low + tile.trimmed.height },
  };
}

/** How far apart two boxes are at most, mm. */
function apart(a: Bounds, b: Bounds): number {
  return Math.max(...(['minX', 'minY', 'maxX', 'maxY'] as const).map((side) => Math.abs(a[side] - b[side])));
}

function within(b: Bounds, { x, y }: Point, by = 0.05): boolean {
  return x >= b.minX - by && x <= b.maxX + by && y >= b.minY - by && y <= b.maxY + by;
}

function textsIn(page: InkPage, box: Bounds): string[] {
  return page.texts.filter((t: InkText) => within(box, t.at) && within(box, t.end)).map(({ text }) => text);
}

describe('as an outside reader finds it in the ink alone', () => {
  test('a set places itself, and every sheet of it says who it is', async () => {
    await fc.assert(
      fc.asyncProperty(wanted, async ({ template: one, paper }) => {
        const { sides } = await drawTemplate(one, { ...context, papers: [paper] });
        const [side] = sides;
        const plan = side?.plans[0];
        const file = side?.files.find(({ name }) => name.endsWith('.pdf'));
        if (!side || !plan || !file) throw new Error('nothing was drawn');
        const pages = await readSheets(file.bytes);
        expect(pages).toHaveLength(plan.pages);
        const { resolved } = resolve(one);
        const found: { centre: Point; diameter: number }[] = [];
        const ends: Point[] = [];
        const targets: Point[] = [];
        const names: { name: string; at: Point }[] = [];
        for (const tile of plan.tiles) {
          const page = pages[tile.page - 1];
          if (!page) throw new Error(`no page ${tile.page}`);
          expect(isTurned(page)).toBe(plan.rotation === 90);
          const laid = isTurned(page) ? upright(page) : page;
          const planned = frameOf(plan, tile);
          const { window, trimmed } = plan.oneSheet || paper === 'single' ? planned : windowOf(page);
          expect(apart(window, planned.window)).toBeLessThan(WITHIN);
          expect(apart(trimmed, planned.trimmed)).toBeLessThan(WITHIN);
          // A drawing of one sheet lies within it, turned or not.
          const shown = plan.oneSheet ? { minX: 0, minY: 0, maxX: laid.width, maxY: laid.height } : window;
          const zero = zeroOf(laid);
          const place = (p: Point): Point => ({ x: p.x - zero.x, y: p.y - zero.y });
          found.push(
            ...roundsOf(laid)
              .filter(({ centre }) => within(shown, centre))
              .map(({ centre, diameter }) => ({ centre: place(centre), diameter })),
          );
          for (const { points } of cutPaths(laid))
            ends.push(...points.filter((p) => within(shown, p)).map(place));
          for (const { points, width } of page.paths) {
            const [xs, ys] = [points.map((p) => p.x), points.map((p) => p.y)];
            const size = Math.max(...xs) - Math.min(...xs);
            if (width === 0.25 && points.length >= 12 && Math.abs(size - 3.6) < 0.01)
              targets.push(place({ x: Math.max(...xs) - 1.8, y: Math.max(...ys) - 1.8 }));
          }
          names.push(
            ...page.texts
              .filter(({ text, at }) => /^K\d$/.test(text) && within(trimmed, at))
              .map(({ text, at }) => ({ name: text, at: place(at) })),
          );
          const said = textsIn(page, trimmed);
          const all = said.join(' ').replace(/\s+/g, ' ');
          expect(all).toContain('Opening');
          expect(all).toContain('UP');
          expect(all).toContain('OUTSIDE');
          expect(all).toContain(CONTEXT.fingerprint);
          if (one.side) expect(all).toContain(`${one.side.toUpperCase()} SIDE`);
          if (!plan.oneSheet) expect(all).toContain(`Sheet ${tile.page} of ${plan.pages}`);
        }
        // Each seam is trimmed on one of its two sheets, and says so there.
        const trims = pages.flatMap(({ texts }) => texts.filter(({ text }) => /^trim here/.test(text)));
        expect(trims).toHaveLength(plan.tiles.flatMap(({ joins }) => joins).length / 2);
        for (const cut of resolved.cuts) {
          if (cut.kind === 'hole') {
            const { point } = cut.stations[0] ?? { point: { x: 0, y: 0 } };
            const hit = found.find(
              ({ centre, diameter }) =>
                Math.hypot(centre.x - point.x, centre.y - point.y) < WITHIN &&
                Math.abs(diameter - (cut.diameter ?? 0)) < WITHIN,
            );
            if (!hit)
              throw new Error(`hole ${cut.mark} at ${point.x}, ${point.y} is not where the sheets say`);
            continue;
          }
          for (const { kind, ...segment } of cut.cut.segments) {
            const corner = kind === 'line' && 'from' in segment ? segment.from : null;
            if (!corner) continue;
            const hit = ends.some((p) => Math.hypot(p.x - corner.x, p.y - corner.y) < WITHIN);
            if (!hit) throw new Error(`no end of the line at ${corner.x}, ${corner.y}`);
          }
        }
        const checks = (pages[0]?.texts ?? []).flatMap(({ text }) => [
          ...text.matchAll(/Check: (K\d) to (K\d) must measure (\d+)/g),
        ]);
        if (plan.tiles.length > 1) expect(checks.length).toBeGreaterThan(0);
        for (const [, from, to, length] of checks) {
          const [a, b] = [from, to].map((name) => {
            const label = names.find((n) => n.name === name);
            return (
              label &&
              targets.toSorted(
                (p, q) =>
                  Math.hypot(p.x - label.at.x, p.y - label.at.y) -
                  Math.hypot(q.x - label.at.x, q.y - label.at.y),
              )[0]
            );
          });
          if (!a || !b) throw new Error(`${from} or ${to} is named and not drawn`);
          expect(Math.abs(Math.hypot(a.x - b.x, a.y - b.y) - Number(length))).toBeLessThan(WITHIN);
        }
      }),
      runs(5, 200),
    );
  }, 900_000);

  test('trimmed and shuffled sheets of both sides sort themselves', async () => {
    const { sides } = await drawTemplate({ ...OPENING, side: 'each' }, { ...context, papers: ['a4'] });
    const heap: { said: string; side: string; page: number }[] = [];
    for (const { side, files, plans } of sides) {
      const file = files.find(({ name }) => name.endsWith('.pdf'));
      const pages = await readSheets(file?.bytes ?? new Uint8Array());
      for (const tile of plans[0]?.tiles ?? []) {
        const page = pages[tile.page - 1];
        if (!page || !plans[0] || !side) throw new Error('a sheet is missing');
        const said = textsIn(page, windowOf(page).trimmed).join(' ');
        heap.push({ said, side, page: tile.page });
      }
    }
    expect(heap.length).toBeGreaterThan(6);
    for (const { said, side, page } of heap.toReversed()) {
      expect(/(LEFT|RIGHT) SIDE/.exec(said)?.[1]).toBe(side.toUpperCase());
      expect(Number(/Sheet (\d+) of/.exec(said)?.[1])).toBe(page);
      expect(said).toContain(CONTEXT.fingerprint);
    }
  }, 900_000);
});
