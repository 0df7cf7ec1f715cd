import { describe, expect, test } from 'vitest';
import type { Bit } from '../../src/cut/shape/lint.ts';
import { resolve } from '../../src/cut/shape/resolve.ts';
import { CUT_RULES } from '../../src/cut/shape/rules.ts';
import { contourBounds } from '../../src/geometry/contour.ts';
import type { CutTemplate } from '../../src/model/cut-template.ts';
import { base } from '../../src/units/quantity.ts';
import { hole, keepOut, mm, NOTCH, OPENING, outline, point, span, template } from './fixtures.ts';

const PLATE = outline([
  [-40, 20],
  [40, 20],
  [40, 60],
  [-40, 60],
]);

function findings(one: CutTemplate, bits: readonly Bit[] | null = null): string[] {
  return resolve(one, bits).findings.map((f) => `${f.code}: ${f.message}`);
}

function written(value: number, at = 50): { value: ReturnType<typeof mm>; at: ReturnType<typeof span> } {
  return { value: mm(value), at: span(at) };
}

test('sound templates have no finding', () => {
  expect(findings(NOTCH)).toEqual([]);
  expect(
    findings(OPENING, [
      { id: 'b', diameter: 8.5 },
      { id: 'c', diameter: 12 },
    ]),
  ).toEqual([]);
});

describe('each fault is told once, in words, at its place', () => {
  test.each<[string, CutTemplate, string]>([
    [
      'crossing',
      template({
        outlines: [
          outline([
            [-40, 20],
            [40, 60],
            [40, 20],
            [-40, 60],
          ]),
        ],
      }),
      'cut-outline-crossing: this outline crosses itself at 0, 40',
    ],
    [
      'radius does not fit',
      template({
        outlines: [
          outline([
            [-40, 20],
            [40, 20],
            [40, 30, 12],
            [-40, 30],
          ]),
        ],
      }),
      'cut-radius-misfit: a radius of 12 mm does not fit at this corner; the sides leave room for 10 mm',
    ],
    [
      'web',
      template({ outlines: [PLATE], holes: [hole(47, 40, 8)], web: written(6) }),
      'cut-web-narrow: only 3 mm of panel stays between “Lower grille notch” (A) and “Bolt” (B); the template asks for 6 mm',
    ],
    [
      'keep-out, counting the cutter',
      template({
        outlines: [
          outline([
            [-40, 20, 5],
            [40, 20, 5],
            [40, 60, 5],
            [-40, 60, 5],
          ]),
        ],
        keepOuts: [
          keepOut('Hose', [
            [-80, 62],
            [80, 62],
            [80, 70],
            [-80, 70],
          ]),
        ],
        cutterRadius: written(3),
      }),
      'cut-keep-out-touched: this cut reaches the keep-out “Hose”, counting the cutter’s radius of 3 mm',
    ],
    [
      'outside the panel',
      template({
        outlines: [PLATE],
        panelOutlines: [
          outline([
            [-30, 0],
            [30, 0],
            [30, 90],
            [-30, 90],
          ]),
        ],
      }),
      'cut-outside-panel: “Lower grille notch” (A) does not lie within the panel’s outline',
    ],
    [
      'tolerance',
      template({ outlines: [PLATE], tolerance: written(0.1) }),
      'cut-tolerance-beyond-paper: paper holds about 0.46 mm over 80 mm, by our own reckoning; a tolerance of 0.1 mm must be marked out with a rule or cut from the DXF file',
    ],
    [
      'two in one place',
      template({ holes: [hole(0, 40, 8, 'Upper'), hole(0, 41, 8, 'Lower')] }),
      'cut-features-coincide: “Upper” (A) and “Lower” (B) lie in one place',
    ],
    ['nothing cut', template({}), 'cut-template-empty: this template has no outline, hole, slot or pattern'],
    [
      'open edge without a straight side',
      template({
        outlines: [
          outline(
            [
              [-40, 20],
              [0, 5],
              [40, 20],
              [40, 60],
              [-40, 60],
            ],
            'bottom',
          ),
        ],
      }),
      'cut-outline-open: no straight side of this outline lies furthest to the bottom, so it cannot be open there',
    ],
  ])('%s', (_, one, expected) => {
    expect(findings(one)).toEqual([expected]);
  });

  test('a sharp inner corner and one tighter than the cutter', () => {
    const one = template({
      outlines: [
        outline([
          [-40, 20, 5],
          [40, 20, 5],
          [40, 60, 2],
          [-40, 60],
        ]),
      ],
      cutterRadius: written(3),
    });
    expect(findings(one)).toEqual([
      'cut-radius-below-cutter: an inner radius of 2 mm at 40, 58; the cutter makes none tighter than 3 mm: round the corner, as in "x,y r3", or cut with another',
      'cut-radius-below-cutter: a sharp inner corner at -40, 60; the cutter makes none tighter than 3 mm: round the corner, as in "x,y r3", or cut with another',
    ]);
  });

  test('a hole that no bit makes; a cutter may make a large one', () => {
    const bits = [{ id: 'bit-8', diameter: 8 }];
    expect(findings(template({ holes: [hole(0, 40, 8.5)] }), bits)).toEqual([
      'cut-hole-no-bit: no declared bit makes a hole of 8.5 mm; declared: 8 mm',
    ]);
    expect(findings(template({ holes: [hole(0, 40, 8)] }), bits)).toEqual([]);
    expect(findings(template({ holes: [hole(0, 40, 30)], cutterRadius: written(3) }), bits)).toEqual([]);
  });

  test('a missing datum is a warning', () => {
    const { findings: found } = resolve(template({ outlines: [PLATE], datums: [] }));
    expect(found.map((f) => [f.code, f.severity])).toEqual([['cut-datum-missing', 'warning']]);
  });
});

describe('bad numbers', () => {
  test.each([0, -5, Number.NaN, 1e9, Number.POSITIVE_INFINITY])('a diameter of %d', (diameter) => {
    const { findings: found } = resolve(template({ holes: [hole(0, 40, diameter, 'Bolt', 777)] }));
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ code: 'cut-number-unusable', at: span(777) });
  });

  test('a place a million kilometres away', () => {
    expect(findings(template({ holes: [hole(1e12, 40, 8)] }))[0]).toContain(
      'cut-number-unusable: the hole lies at',
    );
  });

  test('a thousand holes', () => {
    const layout = { kind: 'line', from: point(0, 10), to: point(2000, 10) } as const;
    const pattern = {
      id: null,
      label: 'Grille',
      count: 1000,
      diameter: mm(3),
      layout,
      for: null,
      when: null,
      at: span(9),
    };
    expect(findings(template({ patterns: [pattern] }))).toEqual([
      'cut-features-too-many: this template has 1000 cuts; 200 is the most that one drawing can name',
    ]);
  });

  test('an outline of two points', () => {
    expect(
      findings(
        template({
          outlines: [
            outline([
              [0, 0],
              [10, 0],
            ]),
          ],
        }),
      ),
    ).toEqual(['cut-corners-too-few: an outline needs at least three corners; this one has 2']);
  });
});

describe('what is worked out', () => {
  test('a set-back makes an opening larger, and an open one ends on its edge still', () => {
    const one = resolve({ ...NOTCH, setBack: written(2) }).resolved.cuts[0];
    if (!one) throw new Error('nothing cut');
    const b = contourBounds(one.area);
    expect([b.minX, b.minY, b.maxX, b.maxY].map((v) => Number(v.toFixed(6)))).toEqual([-64, 0, 64, 40]);
    expect(one.cut.closed).toBe(false);
    expect(one.edge).not.toBeNull();
  });

  test('an arc bends the side between two sharp corners', () => {
    const arcs = [
      { from: point(-40, 60), through: point(0, 70), to: point(40, 60), when: null, at: span(5) },
    ];
    const { resolved, findings: found } = resolve(template({ outlines: [PLATE], arcs }));
    expect(found).toEqual([]);
    expect(contourBounds(resolved.cuts[0]?.area ?? { segments: [], closed: true }).maxY).toBeCloseTo(70, 9);
    const stray = [{ ...(arcs[0] as (typeof arcs)[0]), from: point(-41, 60) }];
    expect(findings(template({ outlines: [PLATE], arcs: stray }))[0]).toContain('cut-arc-stray');
  });

  test('a corner beside an arc is rounded into it', () => {
    const arcs = [
      { from: point(-40, 60), through: point(0, 70), to: point(40, 60), when: null, at: span(5) },
    ];
    const rounded = outline([
      [-40, 20],
      [40, 20],
      [40, 60, 6],
      [-40, 60, 6],
    ]);
    const { resolved, findings: found } = resolve(template({ outlines: [rounded], arcs }));
    expect(found).toEqual([]);
    const radii = (resolved.cuts[0]?.area.segments ?? []).flatMap((s) =>
      s.kind === 'arc' ? [s.radius] : [],
    );
    // Over a chord of 80 with a rise of 10, R = (40² + 10²) / (2 · 10).
    expect(radii.map((radius) => Number(radius.toFixed(9))).sort()).toEqual([6, 6, 85]);
    const wide = outline([
      [-40, 20],
      [40, 20],
      [40, 60, 60],
      [-40, 60],
    ]);
    expect(findings(template({ outlines: [wide], arcs }))[0]).toMatch(
      /cut-radius-misfit: a radius of 60 mm does not fit at this corner; the sides leave room for [\d.]+ mm/,
    );
  });

  test('on a curved panel a hole keeps its size and moves outwards', () => {
    const { resolved } = resolve(template({ holes: [hole(150, 40, 8)], curveRadius: written(300) }));
    const cut = resolved.cuts[0];
    // 2·R·asin(c / 2R) for a chord of 300 mm on R 300 is 314.159265: half of it from the crown.
    expect(cut?.stations[0]?.point.x).toBeCloseTo(314.159265 / 2, 6);
    expect(cut?.diameter).toBe(8);
  });

  test('a cut has the same letter on every drawing of its template', () => {
    const [first, second] = [hole(0, 20, 8, 'First', 201), hole(0, 60, 8, 'Second', 202)];
    const whole = template({ outlines: [], holes: [first, second] });
    const variant = { suffix: 'fog-no', builds: 'without front fog lamps', whole };
    const { resolved } = resolve({ ...whole, holes: [second], variant });
    expect(resolved.cuts.map(({ mark, label }) => [mark, label])).toEqual([['B', 'Second']]);
  });

  test('holes on a circle', () => {
    const layout = {
      kind: 'circle',
      centre: point(0, 100),
      circle: mm(127),
      start: base<'angle'>(90),
    } as const;
    const ring = { id: null, label: 'Ring', count: 6, diameter: mm(6), layout };
    const pattern = { ...ring, for: null, when: null, at: span(9) };
    const { resolved } = resolve(template({ patterns: [pattern] }));
    expect(resolved.cuts).toHaveLength(6);
    expect(resolved.cuts[0]?.stations[0]?.point.y).toBeCloseTo(163.5, 9);
  });
});

test('rules have distinct codes, kebab-case', () => {
  const codes = CUT_RULES.map((r) => r.code);
  expect(new Set(codes).size).toBe(codes.length);
  for (const code of codes) expect(code).toMatch(/^cut-[a-z-]+$/);
});
