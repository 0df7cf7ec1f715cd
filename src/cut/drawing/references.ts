import type { Bounds, Point } from '../../geometry/point.ts';
import { line, type Segment } from '../../geometry/segment.ts';
import type { CutDatum } from '../../model/cut-template.ts';
import { mm, type Resolved } from '../shape/resolved.ts';

/** A line by which a sheet is laid: a datum itself, or one parallel to it with its distance in words. */
export interface DatumReference {
  readonly axis: CutDatum['axis'];
  /** Where it stands along its axis, in the drawing's millimetres. */
  readonly position: number;
  readonly line: Segment;
  /** What is said of it, the fullest first: shorter ones serve where the sheet has little room. */
  readonly words: readonly string[];
}

/** No reference stands nearer to the edge of what is shown, mm. */
const INSET = 5;

/** A reference keeps this far from corners and centres where it can, mm. */
const CLEAR = 4;

/**
 * The lines by which what a window shows is laid on the panel, for each axis: every datum that the window shows,
 * else one line parallel to the nearest, a round number of millimetres from it. They run from edge to edge.
 *
 * @param window in the drawing's millimetres; those of a reduced drawing are `factor` real ones
 */
export function referencesIn(resolved: Resolved, window: Bounds, factor = 1): DatumReference[] {
  return (['vertical', 'horizontal'] as const).flatMap((axis) => {
    const [low, high] = axis === 'vertical' ? [window.minX, window.maxX] : [window.minY, window.maxY];
    const datums = resolved.datums.filter((datum) => datum.axis === axis);
    const shown = datums.filter(({ position }) => position >= low + 1 && position <= high - 1);
    if (shown.length > 0) return shown.map((datum) => datumReference(datum, resolved, window, factor));
    const middle = (low + high) / 2;
    const nearest = datums.toSorted(
      (a, b) => Math.abs(a.position - middle) - Math.abs(b.position - middle),
    )[0];
    return nearest ? [parallel(nearest, resolved, window, factor)] : [];
  });
}

function datumReference(datum: CutDatum, resolved: Resolved, window: Bounds, factor: number): DatumReference {
  const { axis, position, label } = datum;
  const vertical = axis === 'vertical';
  const from = vertical ? resolved.origin.x : resolved.origin.y;
  const at = `${vertical ? 'x' : 'y'} = ${mm((position - from) / factor)}`;
  return {
    axis,
    position,
    line: across(axis, position, window),
    words: [`DATUM ${label} (${at})`, `DATUM ${shortened(label)} (${at})`, `DATUM ${at}`],
  };
}

function parallel(datum: CutDatum, resolved: Resolved, window: Bounds, factor: number): DatumReference {
  const { axis, label } = datum;
  const vertical = axis === 'vertical';
  const distance = roundDistance(datum, resolved, window, factor);
  const position = datum.position + distance * factor;
  const way = vertical ? (distance < 0 ? 'left of' : 'right of') : distance < 0 ? 'below' : 'above';
  const away = `${mm(Math.abs(distance))} mm ${way}`;
  return {
    axis,
    position,
    line: across(axis, position, window),
    words: [
      `This line is ${away} the datum: ${label}`,
      `This line is ${away} the datum: ${shortened(label)}`,
      `${away} datum ${vertical ? 'x' : 'y'}`,
    ],
  };
}

/** A distance that is easily measured: in fifties, else in tens, else in whole millimetres, clear of all points. */
function roundDistance(datum: CutDatum, resolved: Resolved, window: Bounds, factor: number): number {
  const vertical = datum.axis === 'vertical';
  const [low, high] = (vertical ? [window.minX, window.maxX] : [window.minY, window.maxY]).map(
    (edge) => (edge - datum.position) / factor,
  ) as [number, number];
  const inset = Math.min(INSET / factor, (high - low) / 4);
  const taken = takenAlong(resolved, datum.axis).map(({ at, reach }) => ({
    at: (at - datum.position) / factor,
    reach: reach / factor,
  }));
  for (const clear of [CLEAR, 1]) {
    for (const step of [50, 10, 5, 1]) {
      const first = Math.ceil((low + inset) / step);
      const count = Math.max(0, Math.floor((high - inset) / step) - first + 1);
      const steps = Array.from({ length: count }, (_, i) => (first + i) * step);
      const free = steps.filter((at) => taken.every((one) => Math.abs(one.at - at) >= clear + one.reach));
      const chosen = free.toSorted((a, b) => Math.abs(a) - Math.abs(b))[0];
      if (chosen !== undefined) return chosen;
    }
  }
  return Math.round((low + high) / 2);
}

/** Where corners, holes, and lines that run the same way stand, with how far they reach to either side. */
function takenAlong({ cuts, keepOuts }: Resolved, axis: CutDatum['axis']): { at: number; reach: number }[] {
  const of = (point: Point): number => (axis === 'vertical' ? point.x : point.y);
  const stations = cuts.flatMap(({ stations, diameter, kind }) =>
    stations.map(({ point }) => ({ at: of(point), reach: kind === 'outline' ? 0 : (diameter ?? 0) / 2 })),
  );
  const along = [...cuts.map(({ cut }) => cut), ...keepOuts.map(({ area }) => area)].flatMap(({ segments }) =>
    segments.flatMap((s) =>
      s.kind === 'line' && Math.abs(of(s.from) - of(s.to)) < 0.01 ? [{ at: of(s.from), reach: 0 }] : [],
    ),
  );
  return [...stations, ...along];
}

function across(axis: CutDatum['axis'], position: number, window: Bounds): Segment {
  return axis === 'vertical'
    ? line({ x: position, y: window.minY }, { x: position, y: window.maxY })
    : line({ x: window.minX, y: position }, { x: window.maxX, y: position });
}

/** What a datum is called before the words that say how to find it. */
function shortened(label: string): string {
  return label.split(',')[0] ?? label;
}
