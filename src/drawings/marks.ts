import type { Element } from 'hast';
import { s } from 'hastscript';
import type { PictureBox } from '../model/block.ts';
import { MARGIN, type MarkLayout, PICTURE_WIDTH, type PlacedMark } from './place-marks.ts';

/** Width of a leader: a narrow continuous line (ISO 128, type 01.1), about 0.5 mm in print, one pixel on a phone. */
const LINE = 3.2;
const HALO = 9;
const DOT = 8;

/**
 * Draws placed marks as an SVG that lies over the picture. Its viewBox is the picture and the margins with
 * letters, so the page lays both in one grid cell, gives the SVG the full width, and sets the picture against
 * the sides that have no margin: the class `marked-above` means a margin above, and so on.
 *
 * Lines are dark with a white rim, so that they read on any photo and in black and white; letters stand beside
 * the picture in the colour of the text.
 *
 * @param detail the part that is shown enlarged elsewhere, as fractions of the picture shown
 */
export function marksOverlay(layout: MarkLayout, detail: PictureBox | null = null): Element {
  const { left, top, right, bottom } = margins(layout);
  const box = [-left, -top, PICTURE_WIDTH + left + right, layout.height + top + bottom].map(round);
  const classes = ['marks', ...layout.sides.map((side) => `marked-${side}`)];
  const frame = detail ? [detailFrame(detail, layout.height)] : [];
  const rims = layout.placed.map((mark) => leaderLine(mark, 'mark-rim', '#fff', HALO));
  const lines = layout.placed.map((mark) => leaderLine(mark, 'mark-line', '#111', LINE));
  return s(
    'svg',
    { className: classes, viewBox: box.join(' '), ariaHidden: 'true', focusable: 'false' },
    ...frame,
    ...rims,
    ...lines,
    ...layout.placed.map(dot),
    ...layout.placed.map((mark) => letter(mark, layout.letterSize)),
  );
}

/** Room around the picture for letters, in units of the overlay. */
export function margins(layout: MarkLayout): {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
} {
  const room = (side: (typeof layout.sides)[number]) => (layout.sides.includes(side) ? MARGIN : 0);
  return { left: room('left'), top: room('above'), right: room('right'), bottom: room('below') };
}

function leaderLine(
  { leader: { from, to } }: PlacedMark,
  name: string,
  stroke: string,
  width: number,
): Element {
  return s('line', {
    className: name,
    x1: round(from.x),
    y1: round(from.y),
    x2: round(to.x),
    y2: round(to.y),
    stroke,
    'stroke-width': width,
    'stroke-linecap': 'round',
  });
}

function dot({ leader: { to } }: PlacedMark): Element {
  const place = { cx: round(to.x), cy: round(to.y) };
  return s('circle', {
    className: 'mark-dot',
    ...place,
    r: DOT,
    fill: '#111',
    stroke: '#fff',
    'stroke-width': LINE,
  });
}

/** The letter's middle is set by its base line: `dominant-baseline` is not drawn alike everywhere. */
function letter({ letter: name, centre }: PlacedMark, size: number): Element {
  return s(
    'text',
    {
      className: 'mark-letter',
      x: round(centre.x),
      y: round(centre.y + size * 0.36),
      'font-size': round(size),
      'font-weight': 700,
      'text-anchor': 'middle',
      fill: 'currentColor',
    },
    name,
  );
}

function detailFrame({ left, top, width, height }: PictureBox, pictureHeight: number): Element {
  const place = {
    x: round(left * PICTURE_WIDTH),
    y: round(top * pictureHeight),
    width: round(width * PICTURE_WIDTH),
    height: round(height * pictureHeight),
    fill: 'none',
  };
  return s(
    'g',
    { className: 'mark-detail' },
    s('rect', { ...place, stroke: '#fff', 'stroke-width': HALO }),
    s('rect', { ...place, stroke: '#111', 'stroke-width': LINE }),
  );
}

function round(value: number): number {
  return Number(value.toFixed(1));
}
