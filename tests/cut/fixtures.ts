import { readFileSync } from 'node:fs';
import type { CutContext } from '../../src/cut/job.ts';
import type {
  CutCorner,
  CutHole,
  CutOutline,
  CutPoint,
  CutTemplate,
  KeepOut,
  OpenEdge,
} from '../../src/model/cut-template.ts';
import type { Span } from '../../src/source/span.ts';
import { usualWords } from '../../src/trade/words.ts';
import { base, type Millimetres } from '../../src/units/quantity.ts';

export function mm(value: number): Millimetres {
  return base<'length'>(value);
}

export function span(start: number): Span {
  return { file: 'example/guide.md', start, end: start + 1 };
}

export function point(x: number, y: number): CutPoint {
  return { x: mm(x), y: mm(y) };
}

/** Corners as `[x, y]` or `[x, y, radius]`. */
export function outline(
  corners: readonly (readonly [number, number, number?])[],
  openEdge: OpenEdge | null = null,
): CutOutline {
  const all = corners.map(
    ([x, y, radius], i): CutCorner => ({
      point: point(x, y),
      radius: radius === undefined ? null : mm(radius),
      at: span(100 + i),
    }),
  );
  return { kind: 'corners', corners: all, openEdge, when: null, at: span(100) };
}

export function hole(x: number, y: number, diameter: number, label = 'Bolt', at = 200): CutHole {
  return {
    id: null,
    label,
    centre: point(x, y),
    diameter: mm(diameter),
    for: null,
    when: null,
    at: span(at),
  };
}

export function keepOut(label: string, points: readonly (readonly [number, number])[]): KeepOut {
  return { label, points: points.map(([x, y]) => point(x, y)), when: null, at: span(300) };
}

/** A template with both datums at zero and nothing cut. */
export function template(parts: Partial<CutTemplate>): CutTemplate {
  return {
    id: 'notch',
    title: 'Lower grille notch',
    panel: { value: 'cover', at: span(1) },
    face: 'outside',
    side: null,
    datums: [
      { label: 'Vehicle centreline', axis: 'vertical', position: mm(0), when: null, at: span(10) },
      { label: 'Lower edge of the cover', axis: 'horizontal', position: mm(0), when: null, at: span(11) },
    ],
    outlines: [],
    arcs: [],
    holes: [],
    slots: [],
    patterns: [],
    keepOuts: [],
    panelOutlines: [],
    tolerance: null,
    web: null,
    setBack: null,
    curveRadius: null,
    curveAxis: 'vertical',
    join: 'round',
    cutterRadius: null,
    cutterDiameter: null,
    variant: null,
    at: span(1),
    ...parts,
  };
}

/** The notch of the design's example guide. */
export const NOTCH: CutTemplate = template({
  outlines: [
    outline(
      [
        [-62, 0],
        [62, 0],
        [62, 38, 6],
        [-62, 38, 6],
      ],
      'bottom',
    ),
  ],
  keepOuts: [
    keepOut('Washer hose, behind', [
      [-80, 60],
      [80, 60],
      [80, 75],
      [-80, 75],
    ]),
  ],
  cutterRadius: { value: mm(3), at: span(12) },
  cutterDiameter: { value: mm(6), at: span(12) },
});

/** A roof opening over six A4 sheets, with bolt holes all round. */
export const OPENING: CutTemplate = template({
  id: 'vent',
  title: 'Roof vent opening',
  datums: [
    { label: 'Roof centreline', axis: 'vertical', position: mm(0), when: null, at: span(10) },
    { label: 'Rear edge of the rail', axis: 'horizontal', position: mm(0), when: null, at: span(11) },
  ],
  outlines: [
    outline([
      [-180, 60, 40],
      [180, 60, 40],
      [180, 420, 40],
      [-180, 420, 40],
    ]),
  ],
  holes: [hole(-120, 30, 8.5), hole(120, 30, 8.5), hole(0, 30, 12, 'Drain')],
  patterns: [
    {
      id: 'upper',
      label: 'Upper bolts',
      count: 5,
      diameter: mm(8.5),
      layout: { kind: 'line', from: point(-160, 445), to: point(160, 445) },
      for: null,
      when: null,
      at: span(400),
    },
  ],
  keepOuts: [
    keepOut('Roof bow', [
      [-200, 465],
      [200, 465],
      [200, 490],
      [-200, 490],
    ]),
  ],
});

const fonts = new URL('../../node_modules/dejavu-fonts-ttf/ttf/', import.meta.url);

export const CONTEXT: CutContext = {
  guideTitle: 'Auxiliary lamp cradle, behind the front bumper cover',
  revision: '3',
  fingerprint: '4f7a-19c2',
  papers: ['a4', 'letter'],
  fonts: {
    regular: new Uint8Array(readFileSync(new URL('DejaVuSans.ttf', fonts))),
    bold: new Uint8Array(readFileSync(new URL('DejaVuSans-Bold.ttf', fonts))),
  },
  words: usualWords,
  side: null,
};
