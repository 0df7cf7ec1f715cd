import type { Contour } from '../../geometry/contour.ts';
import type { Point } from '../../geometry/point.ts';
import type { Line } from '../../geometry/segment.ts';
import type { CutDatum, Face, TemplateVariant } from '../../model/cut-template.ts';
import type { Span } from '../../source/span.ts';

/** A point that is dimensioned: a corner of an outline, or the centre of a hole. */
export interface Station {
  /** `A`, `A1`, `B`: how the drawing and the list of positions name it. */
  readonly mark: string;
  readonly point: Point;
  /** For a rounded corner, the middle of its arc: the corner itself lies off the line. */
  readonly on?: Point;
  /** `r 6`, `Ø 8.5`, `arc r 120` for a point halfway along an arc, or empty. */
  readonly size: string;
}

/** One thing that is cut, exactly as it is to be. */
export interface ResolvedCut {
  readonly kind: 'outline' | 'hole' | 'slot';
  /** Letter on the drawing. */
  readonly mark: string;
  readonly label: string;
  /** The area that falls away, counter-clockwise. */
  readonly area: Contour;
  /** The line that is cut: the same, or open where it runs out over the panel's edge. */
  readonly cut: Contour;
  /** The part of the panel's own edge that an open cut takes away. */
  readonly edge: Line | null;
  /** Where the path of the cutter's middle lies, where a cutter was named. */
  readonly toolPath: Contour | null;
  readonly stations: readonly Station[];
  readonly diameter: number | null;
  readonly at: Span;
}

interface ResolvedKeepOut {
  readonly label: string;
  readonly area: Contour;
  readonly at: Span;
}

/** A template with every shape worked out, seen on one face and for one side. */
export interface Resolved {
  readonly id: string;
  readonly title: string;
  readonly face: Face;
  readonly side: 'left' | 'right' | null;
  readonly datums: readonly CutDatum[];
  /** Where the first upright and the first level datum cross: all places are measured from here. */
  readonly origin: Point;
  readonly cuts: readonly ResolvedCut[];
  readonly keepOuts: readonly ResolvedKeepOut[];
  readonly panel: Contour | null;
  /** What was done to the drawn shapes before the line to cut: set-back, unrolling, mirroring, each in words. */
  readonly applied: readonly string[];
  /** Declared, or what paper can hold over the template's longest dimension, mm. */
  readonly tolerance: { readonly declared: number | null; readonly paper: number; readonly longest: number };
  /** Which of several drawings of the template this is; `null` where there is one. */
  readonly variant: TemplateVariant | null;
  readonly at: Span;
}

/** Everything that a template's author has written on its sheets. */
export function writtenWords({ title, variant, datums, cuts, keepOuts }: Resolved): readonly string[] {
  return [title, variant?.builds ?? '', ...[...datums, ...cuts, ...keepOuts].map(({ label }) => label)];
}

/** A length for people: millimetres with at most two decimals, no trailing zeros. */
export function mm(value: number): string {
  const text = value.toFixed(2).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

/** Letters for cuts: A to Z without I and O (which read as figures), then AA, AB and so on. */
export function letterOf(index: number): string {
  const letters = 'ABCDEFGHJKLMNPQRSTUVWXYZ';
  const [high, low] = [Math.floor(index / letters.length), index % letters.length];
  return `${high > 0 ? letters[high - 1] : ''}${letters[low]}`;
}
