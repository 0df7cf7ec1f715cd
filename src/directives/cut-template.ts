import { finding } from '../diagnostics/rule-card.ts';
import type { CutTemplate } from '../model/cut-template.ts';
import type { Written } from '../source/span.ts';
import type { DocumentNode } from '../syntax/tree.ts';
import type { Quantity } from '../units/quantity.ts';
import { meant, required } from './attributes/attribute.ts';
import { id, oneOf, ref, size } from './attributes/attribute-types.ts';
import { when } from './attributes/when.ts';
import type { CutShape } from './cut-shape.ts';
import { cutShapes } from './cut-shapes.ts';
import { directive, type Scope } from './directive.ts';
import { misplaced } from './rules/directive-misplaced.ts';

const shapeNamed = new Map(cutShapes.map((shape) => [shape.name, shape]));

/** A cut template: what is cut, measured from which datums, clear of what. */
export const cutTemplate = directive({
  name: 'cut-template',
  form: 'container',
  label: 'required',
  attributes: {
    id: meant(
      required(id),
      'The name by which `:cut` and `:cut-template` speak of it, and that of its files.',
    ),
    panel: meant(required(ref), 'The part that is cut. Nothing that covers it is in place then.'),
    face: meant(
      required(oneOf('outside', 'inside')),
      'The face of the panel on which the sheet is laid, and as which everything is drawn.',
    ),
    side: meant(
      oneOf('left', 'right', 'each'),
      'The side of the vehicle; `each` makes the mirrored template too.',
    ),
    tolerance: meant(
      size('length'),
      'How far a cut may be off. Where paper cannot hold that over the length of the template, it is a finding.',
    ),
    web: meant(size('length'), 'The least of the panel that must stay between two cuts.'),
    'set-back': meant(size('length'), 'Every outline is cut that much outside its line.'),
    'curve-radius': meant(
      size('length'),
      'The radius of a curved panel, where places are measured straight across it; they are unrolled.',
    ),
    'curve-axis': meant(
      oneOf('vertical', 'horizontal'),
      'Which way the axis of the curve runs: about a vertical one, as where nothing is written, x is unrolled; about a horizontal one, y.',
    ),
    join: meant(oneOf('round', 'mitre'), 'What `set-back` makes of an outward corner.'),
    when,
  },
  summary:
    'A full-scale template: outline, holes, datums and what lies behind, seen on the stated face. Where what stands in it has a `when`, there are sheets for each drawing that a build really has, and each says which builds it is for. On a curved panel whose places are given straight across (as a drawing seen from in front gives them), `curve-radius` is the radius of the panel, and `curve-axis` which way the axis of the curve runs: about a `vertical` one, as if no word is given, x is unrolled, about a `horizontal` one y; the sheets and `check` say by how much places move. `set-back` cuts every outline that much outside its line, `web` is the least panel that must stay between two cuts, `tolerance` how far a cut may be off. Templates with the same panel and the same two datums, by their words, are judged together: webs, overlaps, keep-outs, the panel’s outline and what is gone.',
  example:
    ':::cut-template[Grille notch]{#notch panel=cover face=outside}\n::datum[Vehicle centreline]{axis=vertical at="0 mm"}\n::outline{points="-62,0 62,0 62,38 r6 -62,38 r6" unit=mm open-edge=bottom}\n:::',
  build: ({ values, directive: found, scope }) => {
    if (found.form !== 'container' || !values.id) return null;
    const shapes = readShapes(found.children, scope);
    const of = <S extends CutShape['shape']>(name: S) =>
      shapes.filter((shape): shape is Extract<CutShape, { readonly shape: S }> => shape.shape === name);
    const template: CutTemplate = {
      id: values.id.value,
      title: found.labelText,
      panel: values.panel?.value ?? null,
      face: values.face?.value ?? 'outside',
      side: values.side?.value ?? null,
      datums: of('datum'),
      outlines: shapes.flatMap((shape) => (shape.shape === 'outline' ? [shape.outline] : [])),
      arcs: of('arc'),
      holes: of('hole'),
      slots: of('slot'),
      patterns: of('pattern'),
      keepOuts: of('keep-out'),
      panelOutlines: shapes.flatMap((shape) => (shape.shape === 'panel' ? [shape.outline] : [])),
      tolerance: lengthOf(values.tolerance),
      web: lengthOf(values.web),
      setBack: lengthOf(values['set-back']),
      curveRadius: lengthOf(values['curve-radius']),
      curveAxis: values['curve-axis']?.value ?? 'vertical',
      join: values.join?.value ?? 'round',
      cutterRadius: null,
      cutterDiameter: null,
      variant: null,
      at: found.at,
    };
    return { template, idAt: values.id.at, when: values.when };
  },
});

function lengthOf(written: Written<Quantity<'length'>> | null) {
  return written && { value: written.value.base, at: written.at };
}

function readShapes(children: readonly DocumentNode[], scope: Scope): readonly CutShape[] {
  return children.flatMap((child) => {
    const reader =
      child.type === 'directive' && child.form === 'leaf' ? shapeNamed.get(child.name) : undefined;
    if (reader && child.type === 'directive') return reader.read(child, scope) ?? [];
    const message =
      'only datums, outlines, holes and the like stand in a cut template; put text before or after it';
    scope.report(finding(misplaced, child.at, message));
    return [];
  });
}
