import type { Bounds } from '../../geometry/point.ts';
import { type Paper, SAFE_MARGIN } from '../../trade/paper.ts';

/** Sheets that join share this much of the drawing, mm: enough to glue, and to hold the crosses. */
export const OVERLAP = 10;

/** Width of the ruler band round the window of a tile, mm. */
export const BAND = 10;

/** Height of the strip below the window: a 50 mm square and its caption. */
export const STRIP = 57;

/** Where things stand on a sheet: millimetres from its lower left corner, y up. */
export interface Layout {
  readonly paper: Paper;
  /** No ink outside it. */
  readonly safe: Bounds;
  /** What a tile shows of the drawing; whole millimetres in size. */
  readonly window: Bounds;
  readonly strip: Bounds;
}

/** Lays out a tile on a paper. */
export function layoutOf(paper: Paper): Layout {
  const safe = {
    minX: SAFE_MARGIN.left,
    minY: SAFE_MARGIN.bottom,
    maxX: paper.width - SAFE_MARGIN.right,
    maxY: paper.height - SAFE_MARGIN.top,
  };
  const width = Math.floor(safe.maxX - safe.minX - 2 * BAND);
  const height = Math.floor(safe.maxY - safe.minY - 2 * BAND - STRIP);
  const minX = (safe.minX + safe.maxX - width) / 2;
  const minY = safe.minY + STRIP + BAND;
  return {
    paper,
    safe,
    window: { minX, minY, maxX: minX + width, maxY: minY + height },
    strip: { ...safe, maxY: safe.minY + STRIP },
  };
}
