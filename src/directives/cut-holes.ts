import { finding } from '../diagnostics/rule-card.ts';
import type { CutHole, CutPattern } from '../model/cut-template.ts';
import type { Ref } from '../model/inline.ts';
import type { When } from '../model/when.ts';
import type { Written } from '../source/span.ts';
import type { Directive } from '../syntax/tree.ts';
import { base } from '../units/quantity.ts';
import { meant, required } from './attributes/attribute.ts';
import { id, list, quantity, ref, size, wholeNumber, words } from './attributes/attribute-types.ts';
import { coordinateUnit, onePoint, pointIn, points } from './attributes/points.ts';
import { when } from './attributes/when.ts';
import { type CutShape, drawingOf, unitOf } from './cut-shape.ts';
import { type DirectiveReader, directive } from './directive.ts';
import { patternShapeless } from './rules/pattern-shapeless.ts';

const holeId = meant(id, 'The name by which `:drill`, `:cut` and `:hole` speak of it.');
const passesThrough = meant(
  ref,
  'The fastener that goes through it. A hole that is too small or too large for that is a finding.',
);

const hole = directive({
  name: 'hole',
  form: 'leaf',
  label: 'required',
  attributes: {
    id: holeId,
    centre: meant(required(onePoint), 'Its middle, from the zero point of the template.'),
    unit: coordinateUnit,
    diameter: meant(required(size('length')), 'How wide it is. A bit of that diameter must be declared.'),
    for: passesThrough,
    when,
  },
  summary: 'A round hole, and what passes through it.',
  example: '::hole[Bolt hole]{#bolt-hole centre="0,40" unit=mm diameter="9 mm" for=m8-bolt}',
  build: ({ values, unknown, directive: found, scope }): CutShape | null => {
    const unit = unitOf(values.unit, values.centre, unknown.has('unit'), scope);
    if (unit === null || unknown.has('when') || !values.centre || !values.diameter) return null;
    return {
      ...declared(values, found),
      shape: 'hole',
      centre: pointIn(values.centre.value, unit),
      diameter: values.diameter.value.base,
    };
  },
});

const slot = directive({
  name: 'slot',
  form: 'leaf',
  label: 'required',
  attributes: {
    id: holeId,
    from: meant(required(onePoint), 'The middle of its one round end.'),
    to: meant(required(onePoint), 'The middle of its other round end.'),
    unit: coordinateUnit,
    width: meant(required(size('length')), 'How wide it is, across.'),
    for: passesThrough,
    when,
  },
  summary: 'A hole with straight sides and round ends, from the centre of one end to that of the other.',
  example: '::slot[Cable slot]{#cable from="0,0" to="40,0" unit=mm width="12 mm"}',
  build: ({ values, unknown, directive: found, scope }): CutShape | null => {
    const unit = unitOf(values.unit, values.from, unknown.has('unit'), scope);
    if (unit === null || unknown.has('when') || !values.from || !values.to || !values.width) return null;
    return {
      ...declared(values, found),
      shape: 'slot',
      from: pointIn(values.from.value, unit),
      to: pointIn(values.to.value, unit),
      width: values.width.value.base,
    };
  },
});

const pattern = directive({
  name: 'pattern',
  form: 'leaf',
  label: 'required',
  attributes: {
    id: holeId,
    count: meant(
      required(wholeNumber(1, 9_999)),
      'How many holes there are. Of a drawing, as many must be in it.',
    ),
    diameter: meant(required(size('length')), 'How wide each of them is.'),
    along: meant(points, 'The middles of the first and the last hole of a row.'),
    centre: meant(onePoint, 'The middle of the circle that the holes lie on.'),
    circle: meant(size('length'), 'The diameter of the circle that the holes lie on.'),
    start: meant(
      quantity('angle'),
      'Where the first hole lies on the circle, anticlockwise from the right; there, where nothing is written.',
    ),
    from: meant(words, "The maker's drawing in which the holes are, SVG or DXF, by its path from the guide."),
    layers: meant(list, 'The layers of the drawing that are read; all where nothing is written.'),
    unit: coordinateUnit,
    for: passesThrough,
    when,
  },
  summary:
    "Equal holes, evenly spaced along a line or on a circle, or where a maker's drawing has circles of that diameter (`from=`, on `layers` where they are named; `count` is held against the drawing).",
  example:
    '::pattern[Vent holes]{#vents count=6 diameter="5 mm" centre="0,0" unit=mm circle="100 mm" start="0 deg"}',
  build: ({ values, unknown, directive: found, scope }): CutShape | null => {
    if (!values.count || !values.diameter || unknown.has('when')) return null;
    const ways = [values.along, values.centre ?? values.circle, values.from].filter((way) => way !== null);
    if (ways.length > 1) {
      const message =
        'this pattern is placed in two ways; keep one of along="…", centre="…" with circle="…", and from="…"';
      scope.report(finding(patternShapeless, found.nameAt, message));
      return null;
    }
    if (values.from) {
      if (unknown.has('layers') || unknown.has('unit')) return null;
      const drawing = drawingOf(values, scope);
      return drawing && made(values, found, { kind: 'file', drawing });
    }
    const unit = unitOf(values.unit, values.along ?? values.centre, unknown.has('unit'), scope);
    const layout = unit === null ? null : layoutOf(values, unit);
    if (!layout) {
      const placed = values.along ?? values.centre;
      if (unknown.size === 0 && (unit !== null || !placed)) {
        const message =
          'this pattern needs along="x,y x,y", centre="x,y" with circle="100 mm", or from="a drawing"';
        scope.report(finding(patternShapeless, found.nameAt, message));
      }
      return null;
    }
    return made(values, found, layout);
  },
});

function made(
  values: Parameters<typeof declared>[0] & {
    readonly count: Written<number> | null;
    readonly diameter: Written<{ readonly base: CutPattern['diameter'] }> | null;
  },
  found: Directive,
  layout: CutPattern['layout'],
): CutShape | null {
  if (!values.count || !values.diameter) return null;
  const { count, diameter } = values;
  return {
    ...declared(values, found),
    shape: 'pattern',
    count: count.value,
    diameter: diameter.value.base,
    layout,
  };
}

/** What a hole, a slot and a pattern have in common. */
function declared(
  values: {
    readonly id: Written<string> | null;
    readonly for: Written<Ref> | null;
    readonly when: Written<When> | null;
  },
  { labelText, at }: Directive,
): Pick<CutHole, 'id' | 'label' | 'for' | 'when' | 'at'> {
  return {
    id: values.id?.value ?? null,
    label: labelText,
    for: values.for?.value ?? null,
    when: values.when,
    at,
  };
}

function layoutOf(
  values: {
    readonly along: Written<readonly Parameters<typeof pointIn>[0][]> | null;
    readonly centre: Written<Parameters<typeof pointIn>[0]> | null;
    readonly circle: Written<{ readonly base: CutHole['diameter'] }> | null;
    readonly start: Written<{ readonly base: ReturnType<typeof base<'angle'>> }> | null;
  },
  unit: number,
): CutPattern['layout'] | null {
  const [from, to, more] = values.along?.value ?? [];
  if (from && to && !more) return { kind: 'line', from: pointIn(from, unit), to: pointIn(to, unit) };
  if (!values.centre || !values.circle) return null;
  return {
    kind: 'circle',
    centre: pointIn(values.centre.value, unit),
    circle: values.circle.value.base,
    start: values.start?.value.base ?? base<'angle'>(0),
  };
}

/** What is drilled, or cut with round ends. */
export const cutHoles: readonly DirectiveReader<CutShape>[] = [hole, slot, pattern];
