import { chain, mergePieces } from '../../geometry/chain.ts';
import { type Contour, contourBounds } from '../../geometry/contour.ts';
import { type Bounds, distanceBetween, type Point, unite } from '../../geometry/point.ts';
import { arcThrough, endOf, line, pointAt, type Segment, startOf } from '../../geometry/segment.ts';
import { circle } from '../../geometry/shapes.ts';
import { type DrawnFile, plainName, type WantedShape } from './drawn.ts';
import { fitPiece } from './fit.ts';
import { readDxf } from './read-dxf.ts';
import { readSvg } from './read-svg.ts';
import { Refused } from './refused.ts';

/** One line of a maker's drawing, its pieces joined, in millimetres, y up. */
export interface DrawnShape {
  readonly contour: Contour;
  /** Where it is a whole circle. */
  readonly round: { readonly centre: Point; readonly diameter: number } | null;
}

/** What was read from a maker's drawing. */
export interface ReadDrawing {
  readonly ok: true;
  readonly shapes: readonly DrawnShape[];
  readonly bounds: Bounds;
  /** How far arcs lie from the curves that they stand for, mm; 0 where the file has only lines and arcs. */
  readonly error: number;
  /** What stands in the file and is not cut, in words. */
  readonly leftOut: readonly string[];
  /** The layers that something was read from. */
  readonly layers: readonly string[];
}

type DrawingOutcome = ReadDrawing | { readonly ok: false; readonly message: string; readonly line: number };

/** Ends of a maker's lines may lie this far apart and still be meant to meet, mm. */
const MEETS_WITHIN = 0.01;

/** A ring of arcs that lie this near to one circle is that circle, mm. */
const ROUND_WITHIN = 0.005;

/** Nothing on a vehicle's panel lies further from its datums, mm. */
export const FURTHEST = 5000;

/** Reads what a DXF or SVG file draws, or says why it cannot be used and on which line (0 for none). */
export function readDrawing(path: string, text: string, wanted: WantedShape): DrawingOutcome {
  const ending = path.slice(path.lastIndexOf('.')).toLowerCase();
  if (ending !== '.dxf' && ending !== '.svg')
    return { ok: false, message: 'an outline is read from a .dxf or .svg file', line: 0 };
  try {
    return joined(ending === '.dxf' ? readDxf(text, wanted) : readSvg(text, wanted), wanted);
  } catch (error) {
    if (error instanceof Refused) return { ok: false, message: error.message, line: error.line };
    throw error;
  }
}

function joined(file: DrawnFile, { layers }: WantedShape): DrawingOutcome {
  const known = new Set(file.layers.map(plainName));
  const unknown = layers?.find((name) => !known.has(plainName(name)));
  if (unknown !== undefined) {
    const has = file.layers.length > 0 ? `it has ${shapesInWords(file.layers)}` : 'it has none';
    throw new Refused(`the file has no layer “${unknown}”; ${has}`);
  }
  const loose: Segment[] = [];
  let error = 0;
  for (const { piece } of file.pieces) {
    const fitted = fitPiece(piece);
    if (!fitted) throw new Refused('a curve of the file cannot be followed by arcs within 0.005 mm');
    error = Math.max(error, fitted.error);
    loose.push(...fitted.segments);
  }
  if (loose.length === 0) {
    const also = file.leftOut.length > 0 ? `, only ${shapesInWords(file.leftOut)}` : '';
    throw new Refused(`the file holds no line or arc that is cut${also}`);
  }
  const bounds = unite(loose.map((segment) => contourBounds({ segments: [segment], closed: false })));
  if (!(Math.max(-bounds.minX, -bounds.minY, bounds.maxX, bounds.maxY) <= FURTHEST))
    throw new Refused(
      `its outline reaches further than ${FURTHEST} mm from the zero point; is the unit right?`,
    );
  const used = new Set(file.pieces.map(({ layer }) => layer).filter((layer) => layer !== ''));
  const shapes = chain(loose, MEETS_WITHIN, true).map(shapeOf);
  return { ok: true, shapes, bounds, error, leftOut: file.leftOut, layers: [...used] };
}

function shapeOf(run: Contour): DrawnShape {
  const round = roundOf(run);
  const contour = round ? circle(round.centre, round.diameter / 2) : mergePieces(welded(run));
  return { contour, round };
}

/** The circle that a ring of arcs is, for all that can be measured. */
function roundOf({ segments, closed }: Contour): DrawnShape['round'] {
  if (!closed) return null;
  const arcs = segments.filter((segment) => segment.kind === 'arc');
  const turn = arcs.reduce((sum, { sweep }) => sum + sweep, 0);
  if (arcs.length !== segments.length || Math.abs(Math.abs(turn) - 2 * Math.PI) > 0.01) return null;
  const mean = (of: (one: (typeof arcs)[number]) => number): number =>
    arcs.reduce((sum, one) => sum + of(one) * one.sweep, 0) / turn;
  const [centre, radius] = [
    { x: mean((a) => a.centre.x), y: mean((a) => a.centre.y) },
    mean((a) => a.radius),
  ];
  const isOne = arcs.every(
    (one) => distanceBetween(one.centre, centre) + Math.abs(one.radius - radius) <= ROUND_WITHIN,
  );
  return isOne ? { centre, diameter: 2 * radius } : null;
}

/** Ends that are meant to meet do: lines are drawn to the joint, arcs are bent to it. */
function welded({ segments, closed }: Contour): Contour {
  const starts = segments.map((segment, i) => {
    const before = segments[i - 1] ?? (closed ? segments.at(-1) : undefined);
    // A line gives way to an arc, whose centre and radius stay as they are.
    return before?.kind === 'arc' ? endOf(before) : startOf(segment);
  });
  return {
    closed,
    segments: segments.map((segment, i) => {
      const from = starts[i] ?? startOf(segment);
      const to = starts[i + 1] ?? (closed ? starts[0] : undefined) ?? endOf(segment);
      if (distanceBetween(from, startOf(segment)) + distanceBetween(to, endOf(segment)) < 1e-9)
        return segment;
      return segment.kind === 'line' ? line(from, to) : arcThrough(from, pointAt(segment, 0.5), to);
    }),
  };
}

/** A list for people, cut where it grows long. */
export function shapesInWords(names: readonly string[]): string {
  const most = names.slice(0, 12);
  return names.length > most.length ? `${most.join(', ')} and more` : most.join(', ');
}
