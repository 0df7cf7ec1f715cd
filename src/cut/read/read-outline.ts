import { chain, mergePieces } from '../../geometry/chain.ts';
import { type Contour, contourBounds } from '../../geometry/contour.ts';
import { FURTHEST } from '../shape/numbers.ts';
import { readDxf } from './read-dxf.ts';
import { readSvg } from './read-svg.ts';

/** A maker's outline, or why it cannot be used. */
export type ReadOutline =
  | { readonly ok: true; readonly contour: Contour }
  | { readonly ok: false; readonly message: string };

/** Ends of a maker's lines may lie this far apart and still be meant to meet, mm. */
const MEETS_WITHIN = 0.01;

/** Reads the one outline of a DXF or SVG file. Coordinates become millimetres, y up. */
export function readOutline(path: string, text: string): ReadOutline {
  const ending = path.slice(path.lastIndexOf('.')).toLowerCase();
  if (ending !== '.dxf' && ending !== '.svg')
    return { ok: false, message: 'an outline is read from a .dxf or .svg file' };
  const read = ending === '.dxf' ? readDxf(text) : readSvg(text);
  if (!read.ok) return read;
  const contours = chain(read.segments, MEETS_WITHIN, true).map(mergePieces);
  const [first, ...others] = contours;
  if (!first) return { ok: false, message: 'the file holds no line or arc' };
  if (others.length > 0) {
    return {
      ok: false,
      message: `the file holds ${contours.length} separate lines; give one outline a file`,
    };
  }
  const { minX, minY, maxX, maxY } = contourBounds(first);
  if (Math.max(-minX, -minY, maxX, maxY) > FURTHEST) {
    const message = `its outline reaches further than ${FURTHEST} mm from the zero point; is the unit right?`;
    return { ok: false, message };
  }
  return { ok: true, contour: first };
}
