import { type Bounds, grow } from '../../geometry/point.ts';
import { type Paper, SAFE_MARGIN } from '../../trade/paper.ts';

/** Sheets that join share this much of the drawing, mm: enough to glue, and to hold the crosses. */
export const OVERLAP = 10;

/** Width of the ruler band round the window of a tile, mm. */
const BAND = 5;

/** Where things stand on a sheet: millimetres from its lower left corner, y up. */
export interface Layout {
  readonly paper: Paper;
  /** Size of the page: that of the paper, upright or lying. */
  readonly width: number;
  readonly height: number;
  /** No ink outside it. */
  readonly safe: Bounds;
  /** What a tile shows of the drawing; whole millimetres in size. */
  readonly window: Bounds;
}

/** Lays out a tile on a paper. */
export function layoutOf(paper: Paper, landscape = false): Layout {
  const { left, right, top, bottom } = SAFE_MARGIN;
  const [width, height] = landscape ? [paper.height, paper.width] : [paper.width, paper.height];
  // A printer turns a lying page either way, so that its foot may come out at the left or at the right.
  const safe: Bounds = landscape
    ? { minX: bottom, minY: right, maxX: width - bottom, maxY: height - left }
    : { minX: left, minY: bottom, maxX: width - right, maxY: height - top };
  const room = grow(safe, -BAND);
  const [wide, high] = [Math.floor(room.maxX - room.minX), Math.floor(room.maxY - room.minY)];
  const minX = (room.minX + room.maxX - wide) / 2;
  const { minY } = room;
  return { paper, width, height, safe, window: { minX, minY, maxX: minX + wide, maxY: minY + high } };
}

/** Size of a tile's window, whole millimetres. */
export interface WindowSize {
  readonly width: number;
  readonly height: number;
}

/** What a sheet of a paper shows, upright and lying. */
export interface WindowSizes {
  readonly upright: WindowSize;
  readonly lying: WindowSize;
}

/** The windows of a paper. */
export function windowSizes(paper: Paper): WindowSizes {
  const size = (landscape: boolean): WindowSize => {
    const { minX, maxX, minY, maxY } = layoutOf(paper, landscape).window;
    return { width: Math.round(maxX - minX), height: Math.round(maxY - minY) };
  };
  return { upright: size(false), lying: size(true) };
}
