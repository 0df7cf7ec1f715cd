import { finding } from '../diagnostics/rule-card.ts';
import { meant, required } from './attributes/attribute.ts';
import { list, oneOf, position, words } from './attributes/attribute-types.ts';
import { coordinateUnit, cornerIn, corners, onePoint, pointIn, points } from './attributes/points.ts';
import { when } from './attributes/when.ts';
import { cutHoles } from './cut-holes.ts';
import { type CutShape, drawingOf, unitOf } from './cut-shape.ts';
import { type DirectiveReader, directive } from './directive.ts';
import { outlineShapeless } from './rules/outline-shapeless.ts';

const datum = directive({
  name: 'datum',
  form: 'leaf',
  label: 'required',
  attributes: {
    axis: meant(
      required(oneOf('vertical', 'horizontal')),
      'Which way the line runs: lengths across are measured from a vertical one, heights from a horizontal one.',
    ),
    at: meant(
      required(position),
      'Where it lies in the template: x for a vertical line, y for a horizontal one.',
    ),
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
    points: meant(
      corners,
      'Its corners one after the other, x to the right and y up; `r6` after one rounds it.',
    ),
    unit: coordinateUnit,
    'open-edge': meant(
      oneOf('bottom', 'top', 'left', 'right'),
      'The side on which the cut runs out over the edge of the panel, so that no line is cut there.',
    ),
    from: meant(words, "The maker's drawing that holds the outline, SVG or DXF, by its path from the guide."),
    layers: meant(list, 'The layers of the drawing that are read; all where nothing is written.'),
    of: meant(oneOf('cut', 'panel'), "What is cut away, or the panel's own edge, which no cut may cross."),
    when,
  },
  summary:
    "What is cut away, as points with corner radii or from the maker's drawing (`from=`, SVG or DXF); `of=panel` is the panel's own. Of a drawing, `layers` names the layers that are read, all where it is not said, and `unit` what a file is drawn in that does not say so itself. Its zero point is the template's.",
  example: '::outline{points="-62,0 62,0 62,38 r6 -62,38 r6" unit=mm open-edge=bottom}',
  build: ({ values, unknown, directive: found, scope }): CutShape | null => {
    const shape = values.of?.value === 'panel' ? 'panel' : 'outline';
    if (values.from) {
      // What could not be read of it would change what is cut.
      if (unknown.has('layers') || unknown.has('unit')) return null;
      const drawing = drawingOf(values, scope);
      return (
        drawing && { shape, outline: { kind: 'file', ...drawing, when: values.when, at: values.from.at } }
      );
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

const arc = directive({
  name: 'arc',
  form: 'leaf',
  label: 'none',
  attributes: {
    from: meant(required(onePoint), 'The corner of the outline where the arc begins.'),
    through: meant(required(onePoint), 'A point that the arc goes through.'),
    to: meant(required(onePoint), 'The next corner of the outline, where the arc ends.'),
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
  attributes: {
    points: meant(required(points), 'Its corners one after the other.'),
    unit: coordinateUnit,
    when,
  },
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
export const cutShapes: readonly DirectiveReader<CutShape>[] = [datum, outline, ...cutHoles, arc, keepOut];
