import { finding } from '../diagnostics/rule-card.ts';
import type {
  CutArc,
  CutDatum,
  CutHole,
  CutOutline,
  CutPattern,
  CutSlot,
  KeepOut,
} from '../model/cut-template.ts';
import type { Written } from '../source/span.ts';
import { base } from '../units/quantity.ts';
import { required } from './attribute.ts';
import { id, oneOf, position, quantity, ref, size, wholeNumber, words } from './attribute-types.ts';
import { type DirectiveReader, directive, type Scope } from './directive.ts';
import { coordinateUnit, cornerIn, corners, onePoint, pointIn, points } from './points.ts';
import { coordinatesUnitless } from './rules/coordinates-unitless.ts';
import { outlineMissing } from './rules/outline-missing.ts';
import { outlineShapeless } from './rules/outline-shapeless.ts';
import { patternShapeless } from './rules/pattern-shapeless.ts';
import { when } from './when.ts';

/** One thing that stands in a cut template. */
export type CutShape =
  | ({ readonly shape: 'datum' } & CutDatum)
  | { readonly shape: 'outline' | 'panel'; readonly outline: CutOutline }
  | ({ readonly shape: 'hole' } & CutHole)
  | ({ readonly shape: 'slot' } & CutSlot)
  | ({ readonly shape: 'pattern' } & CutPattern)
  | ({ readonly shape: 'arc' } & CutArc)
  | ({ readonly shape: 'keep-out' } & KeepOut);

/** Millimetres to one of the directive's unit; `null`, and a finding, where coordinates stand without one. */
function unitOf(
  written: Written<number> | null,
  coordinates: Written<unknown> | null,
  unread: boolean,
  scope: Scope,
): number | null {
  if (written) return written.value;
  if (!coordinates || unread) return null;
  const message = 'these coordinates have no unit; write unit=mm (or in) on the same line';
  scope.report(finding(coordinatesUnitless, coordinates.at, message));
  return null;
}

const datum = directive({
  name: 'datum',
  form: 'leaf',
  label: 'required',
  attributes: {
    axis: required(oneOf('vertical', 'horizontal')),
    at: required(position),
    when,
  },
  summary: 'What the technician measures from, and where it lies in the template.',
  example: '::datum[Vehicle centreline]{axis=vertical at="0 mm"}',
  build: ({ values, directive: found }): CutShape | null =>
    values.axis && values.at
      ? {
          shape: 'datum',
          label: found.labelText,
          axis: values.axis.value,
          position: values.at.value.base,
          when: values.when,
          at: found.at,
        }
      : null,
});

const outline = directive({
  name: 'outline',
  form: 'leaf',
  label: 'optional',
  attributes: {
    points: corners,
    unit: coordinateUnit,
    'open-edge': oneOf('bottom', 'top', 'left', 'right'),
    from: words,
    of: oneOf('cut', 'panel'),
    when,
  },
  summary:
    "What is cut away, as points with corner radii or from the maker's drawing; `of=panel` is the panel's own.",
  example: '::outline{points="-62,0 62,0 62,38 r6 -62,38 r6" unit=mm open-edge=bottom}',
  build: ({ values, unknown, directive: found, scope }): CutShape | null => {
    const shape = values.of?.value === 'panel' ? 'panel' : 'outline';
    if (values.from) {
      const path = scope.resolve(values.from.value);
      const text = path === null ? null : scope.textOf(path);
      if (path !== null && text !== null)
        return { shape, outline: { kind: 'file', path, text, when: values.when, at: values.from.at } };
      const message =
        path === null
          ? `"${values.from.value}" lies outside the workspace; put the drawing beside the guide`
          : `there is no drawing "${values.from.value}" in the workspace, or it is no text file`;
      scope.report(finding(outlineMissing, values.from.at, message));
      return null;
    }
    if (!values.points) {
      if (!unknown.has('points') && !unknown.has('from')) {
        const message = 'this outline has neither points nor a drawing to read them from';
        scope.report(finding(outlineShapeless, found.nameAt, message));
      }
      return null;
    }
    const unit = unitOf(values.unit, values.points, unknown.has('unit'), scope);
    return unit === null
      ? null
      : {
          shape,
          outline: {
            kind: 'corners',
            corners: values.points.value.map((point) => cornerIn(point, unit)),
            openEdge: values['open-edge']?.value ?? null,
            when: values.when,
            at: values.points.at,
          },
        };
  },
});

const hole = directive({
  name: 'hole',
  form: 'leaf',
  label: 'required',
  attributes: {
    id,
    centre: required(onePoint),
    unit: coordinateUnit,
    diameter: required(size('length')),
    for: ref,
    when,
  },
  summary: 'A round hole, and what passes through it.',
  example: '::hole[Bolt hole]{#bolt-hole centre="0,40" unit=mm diameter="9 mm" for=m8-bolt}',
  build: ({ values, unknown, directive: found, scope }): CutShape | null => {
    const unit = unitOf(values.unit, values.centre, unknown.has('unit'), scope);
    if (unit === null || unknown.has('when') || !values.centre || !values.diameter) return null;
    return {
      shape: 'hole',
      id: values.id?.value ?? null,
      label: found.labelText,
      centre: pointIn(values.centre.value, unit),
      diameter: values.diameter.value.base,
      for: values.for?.value ?? null,
      when: values.when,
      at: found.at,
    };
  },
});

const slot = directive({
  name: 'slot',
  form: 'leaf',
  label: 'required',
  attributes: {
    id,
    from: required(onePoint),
    to: required(onePoint),
    unit: coordinateUnit,
    width: required(size('length')),
    for: ref,
    when,
  },
  summary: 'A hole with straight sides and round ends, from the centre of one end to that of the other.',
  example: '::slot[Cable slot]{#cable from="0,0" to="40,0" unit=mm width="12 mm"}',
  build: ({ values, unknown, directive: found, scope }): CutShape | null => {
    const unit = unitOf(values.unit, values.from, unknown.has('unit'), scope);
    if (unit === null || unknown.has('when') || !values.from || !values.to || !values.width) return null;
    return {
      shape: 'slot',
      id: values.id?.value ?? null,
      label: found.labelText,
      from: pointIn(values.from.value, unit),
      to: pointIn(values.to.value, unit),
      width: values.width.value.base,
      for: values.for?.value ?? null,
      when: values.when,
      at: found.at,
    };
  },
});

const pattern = directive({
  name: 'pattern',
  form: 'leaf',
  label: 'required',
  attributes: {
    id,
    count: required(wholeNumber(2, 9_999)),
    diameter: required(size('length')),
    along: points,
    centre: onePoint,
    circle: size('length'),
    start: quantity('angle'),
    unit: coordinateUnit,
    for: ref,
    when,
  },
  summary: 'Equal holes, evenly spaced along a line or on a circle.',
  example:
    '::pattern[Vent holes]{#vents count=6 diameter="5 mm" centre="0,0" unit=mm circle="100 mm" start="0 deg"}',
  build: ({ values, unknown, directive: found, scope }): CutShape | null => {
    if (!values.count || !values.diameter || unknown.has('when')) return null;
    if (values.along && (values.centre || values.circle)) {
      const message =
        'this pattern has both a line and a circle; keep along="…", or centre="…" with circle="…"';
      scope.report(finding(patternShapeless, found.nameAt, message));
      return null;
    }
    const unit = unitOf(values.unit, values.along ?? values.centre, unknown.has('unit'), scope);
    const layout = unit === null ? null : layoutOf(values, unit);
    if (!layout) {
      const placed = values.along ?? values.centre;
      if (unknown.size === 0 && (unit !== null || !placed)) {
        const message = 'this pattern needs along="x,y x,y", or centre="x,y" with circle="100 mm"';
        scope.report(finding(patternShapeless, found.nameAt, message));
      }
      return null;
    }
    return {
      shape: 'pattern',
      id: values.id?.value ?? null,
      label: found.labelText,
      count: values.count.value,
      diameter: values.diameter.value.base,
      layout,
      for: values.for?.value ?? null,
      when: values.when,
      at: found.at,
    };
  },
});

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

const arc = directive({
  name: 'arc',
  form: 'leaf',
  label: 'none',
  attributes: {
    from: required(onePoint),
    through: required(onePoint),
    to: required(onePoint),
    unit: coordinateUnit,
    when,
  },
  summary:
    'Bends the straight side of an outline between two of its corners, as they are typed, into an arc through a third point. A corner with a radius is rounded into the arc.',
  example: '::arc{from="-62,38" through="0,44" to="62,38" unit=mm}',
  build: ({ values, unknown, directive: found, scope }): CutShape | null => {
    const unit = unitOf(values.unit, values.from, unknown.has('unit'), scope);
    if (unit === null || !values.from || !values.through || !values.to) return null;
    return {
      shape: 'arc',
      from: pointIn(values.from.value, unit),
      through: pointIn(values.through.value, unit),
      to: pointIn(values.to.value, unit),
      when: values.when,
      at: found.at,
    };
  },
});

const keepOut = directive({
  name: 'keep-out',
  form: 'leaf',
  label: 'required',
  attributes: { points: required(points), unit: coordinateUnit, when },
  summary: 'Something behind the panel that no cutter may reach.',
  example: '::keep-out[Washer hose, behind]{points="-80,60 80,60 80,75 -80,75" unit=mm}',
  build: ({ values, unknown, directive: found, scope }): CutShape | null => {
    const unit = unitOf(values.unit, values.points, unknown.has('unit'), scope);
    if (unit === null || !values.points) return null;
    const typed = values.points.value.map((point) => pointIn(point, unit));
    return { shape: 'keep-out', label: found.labelText, points: typed, when: values.when, at: found.at };
  },
});

/** What may stand in a cut template. */
export const cutShapes: readonly DirectiveReader<CutShape>[] = [
  datum,
  outline,
  hole,
  slot,
  pattern,
  arc,
  keepOut,
];
