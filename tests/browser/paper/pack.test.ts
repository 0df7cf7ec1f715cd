import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pack, type Run } from '../../../templates/scripts/paper/pack.ts';
import { runs } from '../../samples.ts';

const run = (heights: readonly number[], rest: Partial<Run> = {}): Run => ({
  head: 10,
  again: 10,
  columns: 2,
  fresh: false,
  pieces: heights.map((height) => ({ height, wide: null, keep: false })),
  ...rest,
});

const inColumns = (...columns: readonly (readonly [number, number])[]) => [
  { wide: false, columns: columns.map(([from, to]) => ({ from, to })) },
];

describe('sheets filled with runs of pieces', () => {
  it('goes on below the run before, with columns of about one height', () => {
    expect(pack([run([20, 20, 20, 20]), run([30])], 100, 5)).toEqual([
      [
        {
          run: 0,
          begins: true,
          parts: inColumns([0, 2], [2, 4]),
        },
        {
          run: 1,
          begins: true,
          parts: inColumns([0, 1], [1, 1]),
        },
      ],
    ]);
  });

  it('turns the sheet where neither head nor piece finds room, and where a run asks for a sheet', () => {
    const sheets = pack([run([60, 60]), run([40]), run([5], { fresh: true })], 100, 5);
    expect(sheets.map((bands) => bands.map((band) => band.run))).toEqual([[0], [1], [2]]);
  });

  it('prints the head of a run that has no piece', () => {
    expect(pack([run([])], 100, 5)).toHaveLength(1);
  });

  it('puts what is higher than a sheet on one alone, and goes on', () => {
    const sheets = pack([run([20, 200, 20])], 100, 5);
    expect(sheets.map((bands) => bands.map(({ parts }) => parts))).toEqual([
      [inColumns([0, 1], [1, 1])],
      [inColumns([1, 2])],
      [inColumns([2, 3], [3, 3])],
    ]);
  });

  it('sets a piece across the sheet where its column would stand beside nothing, or find no room', () => {
    const steps = (...heights: readonly number[]): Run => ({
      ...run([]),
      pieces: heights.map((height) => ({ height, wide: height / 2 + 3, keep: false })),
    });
    const across = (from: number, to: number) => ({ wide: true, columns: [{ from, to }] });
    expect(pack([steps(60)], 100, 5)).toEqual([[{ run: 0, begins: true, parts: [across(0, 1)] }]]);
    const [first, ...rest] = pack([steps(50, 50, 70)], 100, 5);
    expect(rest).toEqual([]);
    expect(first?.[0]?.parts).toEqual([...inColumns([0, 1], [1, 2]), across(2, 3)]);
    // What saves no height stays in its column.
    expect(pack([steps(40, 40)], 100, 5)[0]?.[0]?.parts).toEqual(inColumns([0, 1], [1, 2]));
  });

  const piece = fc.record({
    height: fc.integer({ min: 1, max: 80 }),
    wide: fc.option(fc.integer({ min: 1, max: 40 })),
    keep: fc.boolean(),
  });
  const anyRun = fc.record({
    head: fc.integer({ min: 0, max: 20 }),
    again: fc.integer({ min: 0, max: 20 }),
    columns: fc.constantFrom(1 as const, 2 as const),
    fresh: fc.boolean(),
    // Three that must stay together are never higher than a sheet.
    pieces: fc.array(piece, { maxLength: 12 }).map((pieces) =>
      pieces.map(({ height, wide, keep }, index) => ({
        height: height / 3,
        wide: wide === null ? null : wide / 3,
        keep: keep && index % 3 !== 2,
      })),
    ),
  });

  it('places each piece once and in order, within its sheet, and never parts what must stay together', () => {
    fc.assert(
      fc.property(fc.array(anyRun, { maxLength: 5 }), (list) => {
        const sheets = pack(list, 120, 5);
        for (const [index, { pieces, columns: count }] of list.entries()) {
          const parts = sheets.flat().flatMap((band) => (band.run === index ? band.parts : []));
          const columns = parts.flatMap((part) => part.columns);
          for (const { wide, columns: own } of parts) {
            if (!wide) continue;
            expect([count, own.length]).toEqual([2, 1]);
            for (const { from, to } of own)
              expect(pieces.slice(from, to).every((one) => one.wide !== null)).toBe(true);
          }
          expect(columns.flatMap(({ from, to }) => pieces.slice(from, to))).toEqual(pieces);
          for (const { from, to } of columns) {
            expect(count === 1 || from <= to).toBe(true);
            if (to > from && to < pieces.length) expect(pieces[to - 1]?.keep).toBe(false);
          }
        }
        for (const bands of sheets) {
          const heights = bands.map(({ run: at, begins, parts }) => {
            const { head = 0, again = 0, pieces = [] } = list[at] ?? {};
            const high = parts.map(({ wide, columns }) => {
              const each = columns.map(({ from, to }) =>
                pieces.slice(from, to).reduce((sum, one) => sum + ((wide ? one.wide : one.height) ?? 0), 0),
              );
              return Math.max(0, ...each);
            });
            return (begins ? head : again) + high.reduce((sum, height) => sum + height, 0);
          });
          const used = heights.reduce((sum, height) => sum + height, 0) + 5 * (bands.length - 1);
          expect(used).toBeLessThanOrEqual(120.001);
        }
      }),
      runs(60, 2000),
    );
  });
});
