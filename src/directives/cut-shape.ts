import { finding } from '../diagnostics/rule-card.ts';
import type {
  CutArc,
  CutDatum,
  CutHole,
  CutOutline,
  CutPattern,
  CutSlot,
  KeepOut,
  MakersDrawing,
} from '../model/cut-template.ts';
import type { Written } from '../source/span.ts';
import type { Scope } from './directive.ts';
import { coordinatesUnitless } from './rules/coordinates-unitless.ts';
import { outlineMissing } from './rules/outline-missing.ts';

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
export function unitOf(
  written: Written<number> | null,
  coordinates: Written<unknown> | null,
  unread: boolean,
  scope: Scope,
): number | null {
  if (written) return written.value;
  if (!coordinates || unread) return null;
  const message = 'these coordinates have no unit; write unit=mm (or in) on the same line';
  scope.report(finding(coordinatesUnitless, coordinates.at, message, { cause: 'unit' }));
  return null;
}

/** The maker's drawing that a directive names, or `null` with a finding. */
export function drawingOf(
  values: {
    readonly from: Written<string> | null;
    readonly layers: Written<readonly string[]> | null;
    readonly unit: Written<number> | null;
  },
  scope: Scope,
): MakersDrawing | null {
  if (!values.from) return null;
  const path = scope.resolve(values.from.value);
  const text = path === null ? null : scope.textOf(path);
  if (path !== null && text !== null)
    return { path, text, layers: values.layers?.value ?? null, unit: values.unit?.value ?? null };
  const message =
    path === null
      ? `"${values.from.value}" lies outside the workspace; put the drawing beside the guide`
      : `there is no drawing "${values.from.value}" in the workspace, or it is no text file`;
  scope.report(finding(outlineMissing, values.from.at, message));
  return null;
}
