import { createHash } from 'node:crypto';
import { pathData } from '../cut/files/path-data.ts';
import { resolve } from '../cut/shape/resolve.ts';
import { mm } from '../cut/shape/resolved.ts';
import { contourBounds } from '../geometry/contour.ts';
import { unite } from '../geometry/point.ts';
import { templateVariants } from '../job/index.ts';
import type {
  Conditional,
  CutCorner,
  CutOutline,
  CutPattern,
  CutPoint,
  CutTemplate,
} from '../model/cut-template.ts';
import type { Guide } from '../model/guide.ts';
import type { Job } from '../model/job.ts';
import type { Written } from '../source/span.ts';
import type { Millimetres } from '../units/quantity.ts';
import { names, onlyFor, type Telling, told } from './facts.ts';
import type { Fact, RecordLine, RecordOutline, TemplateNode } from './record.ts';

/** A cut template with all that is stated of it, its features as lines, and its lines to cut. */
export function templateNode(
  template: CutTemplate,
  guide: Guide,
  job: Pick<Job, 'plans' | 'decidingOptions'>,
  telling: Telling,
): TemplateNode {
  const outlines = templateVariants(template, guide, job).map((variant) => outlineOf(variant.template));
  return {
    id: template.id,
    name: template.title,
    facts: [
      ...told('called', template.title),
      ...names('panel', template.panel ? [template.panel] : [], telling),
      ...told('face', template.face),
      ...told('side', template.side),
      ...length('tolerance', template.tolerance),
      ...length('least web', template.web),
      ...length('edge set back', template.setBack),
      ...length('radius of the panel', template.curveRadius),
      ...told('curved about', template.curveRadius ? `the ${template.curveAxis} axis` : null),
      ...told('sharp corners', template.setBack ? template.join : null),
      ...length('radius that the cutter turns', template.cutterRadius),
      ...length('width of the cut', template.cutterDiameter),
    ],
    lines: [...featuresOf(template, telling)],
    fingerprint: createHash('sha256').update(JSON.stringify(outlines)).digest('hex'),
    outlines,
  };
}

function length(name: string, written: Written<Millimetres> | null): readonly Fact[] {
  return told(name, written && `${mm(written.value)} mm`);
}

/** Every feature that an author gives, each with what its place and its size are. */
function featuresOf(template: CutTemplate, telling: Telling): readonly RecordLine[] {
  const feature = (
    kind: string,
    label: string,
    of: Conditional & { readonly id?: string | null },
    facts: readonly Fact[],
  ): RecordLine => ({
    kind,
    ...(of.id ? { id: of.id } : {}),
    text: label,
    words: label,
    acts: [],
    facts: [...onlyFor(of.when?.value, telling), ...facts],
  });
  const takes = (of: { readonly for: Written<string> | null }) =>
    names('for', of.for ? [of.for] : [], telling);
  const many = template.outlines.length > 1;
  return [
    ...template.datums.map((one) =>
      feature('datum', one.label, one, [
        ...told('lies', one.axis === 'vertical' ? 'upright' : 'level'),
        ...told('at', `${mm(one.position)} mm`),
      ]),
    ),
    ...template.outlines.map((one, index) =>
      feature('outline', many ? `outline ${index + 1}` : 'outline', one, outlineFacts(one)),
    ),
    ...template.arcs.map((one) =>
      feature(
        'arc',
        `arc from ${point(one.from)} to ${point(one.to)}`,
        one,
        told('through', point(one.through)),
      ),
    ),
    ...template.holes.map((one) =>
      feature('hole', one.label, one, [
        ...told('centre', point(one.centre)),
        ...told('diameter', `${mm(one.diameter)} mm`),
        ...takes(one),
      ]),
    ),
    ...template.slots.map((one) =>
      feature('slot', one.label, one, [
        ...told('from', point(one.from)),
        ...told('to', point(one.to)),
        ...told('width', `${mm(one.width)} mm`),
        ...takes(one),
      ]),
    ),
    ...template.patterns.map((one) =>
      feature('row of holes', one.label, one, [
        ...told('count', String(one.count)),
        ...told('diameter', `${mm(one.diameter)} mm`),
        ...layoutFacts(one),
        ...takes(one),
      ]),
    ),
    ...template.keepOuts.map((one) =>
      feature('keep-out', one.label, one, told('corners', one.points.map(point).join('; '))),
    ),
    ...template.panelOutlines.map((one) => feature('edge of the panel', 'edge', one, outlineFacts(one))),
  ];
}

function outlineFacts(outline: CutOutline): readonly Fact[] {
  if (outline.kind === 'file')
    return told('drawing', [outline.path, ...(outline.layers ?? []), outline.unit ?? ''].join(' '));
  return [
    ...outline.corners.flatMap((corner, index) => told(`corner ${index + 1}`, cornerWords(corner))),
    ...told('open edge', outline.openEdge),
  ];
}

function cornerWords({ point: place, radius }: CutCorner): string {
  return radius === null ? point(place) : `${point(place)}, radius ${mm(radius)} mm`;
}

function layoutFacts({ layout }: CutPattern): readonly Fact[] {
  switch (layout.kind) {
    case 'line':
      return [...told('from', point(layout.from)), ...told('to', point(layout.to))];
    case 'circle':
      return [
        ...told('centre', point(layout.centre)),
        ...told('circle', `${mm(layout.circle)} mm`),
        ...told('first hole at', `${layout.start}°`),
      ];
    case 'file':
      return told('drawing', [layout.drawing.path, ...(layout.drawing.layers ?? [])].join(' '));
  }
}

/** `-84, 30 mm`: to the right and up from where the datums are. */
function point({ x, y }: CutPoint): string {
  return `${mm(x)}, ${mm(y)} mm`;
}

/** The lines to cut of one drawing, set back, unrolled and trimmed as its sheets have them. */
function outlineOf(template: CutTemplate): RecordOutline {
  const { resolved } = resolve(template);
  const bounds = unite(resolved.cuts.map(({ cut }) => contourBounds(cut)));
  return {
    builds: template.variant?.builds ?? '',
    cuts: resolved.cuts.map(({ label, cut }) => ({ label, path: pathData(cut.segments, 0) })),
    datums: resolved.datums.map(({ label, axis, position }) => ({
      label,
      axis,
      at: axis === 'vertical' ? rounded(position) : rounded(-position),
    })),
    box: {
      left: rounded(bounds.minX),
      top: rounded(-bounds.maxY),
      width: rounded(bounds.maxX - bounds.minX),
      height: rounded(bounds.maxY - bounds.minY),
    },
  };
}

/** Tenths of a micrometre, as the path data have. */
function rounded(millimetres: number): number {
  return Number(millimetres.toFixed(4)) + 0;
}
