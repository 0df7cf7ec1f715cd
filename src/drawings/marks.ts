import type { Element } from 'hast';
import { s } from 'hastscript';
import type { PictureBox } from '../model/block.ts';
import type { DrawingPoint } from './leader.ts';
import { MARGIN, type MarkLayout, PICTURE_WIDTH } from './place-marks.ts';

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
  const leaders = layout.placed.map(({ leader }) => leader);
  const lines = leaders.map(({ from, to }) => `M${place(from)}L${place(to)}`).join('');
  // A stroke without length and with round ends is a dot.
  const dots = leaders.map(({ to }) => `M${place(to)}h0`).join('');
  return s(
    'svg',
    {
      className: ['marks', ...layout.sides.map((side) => `marked-${side}`)],
      viewBox: box.join(' '),
      ariaHidden: 'true',
      focusable: 'false',
    },
    ...(detail ? [detailFrame(detail, layout.height)] : []),
    s(
      'g',
      { 'stroke-linecap': 'round' },
      s('path', { className: 'mark-rim', d: lines, ...light(HALO) }),
      s('path', { className: 'mark-line', d: lines, ...dark(LINE) }),
      s('path', { className: 'mark-dot-rim', d: dots, ...light(2 * DOT + LINE) }),
      s('path', { className: 'mark-dot', d: dots, ...dark(2 * DOT - LINE) }),
    ),
    letters(layout),
  );
}

const light = (width: number) => ({ stroke: '#fff', 'stroke-width': width });

const dark = (width: number) => ({ stroke: '#111', 'stroke-width': width });

function place({ x, y }: DrawingPoint): string {
  return `${round(x)} ${round(y)}`;
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

/** A letter's middle is set by its base line: `dominant-baseline` is not drawn alike everywhere. */
function letters({ placed, letterSize }: MarkLayout): Element {
  const look = { 'font-size': round(letterSize), 'font-weight': 700, 'text-anchor': 'middle' };
  return s(
    'text',
    { className: 'mark-letters', ...look, fill: 'currentColor' },
    ...placed.map(({ letter, centre: { x, y } }) =>
      s('tspan', { x: round(x), y: round(y + letterSize * 0.36) }, letter),
    ),
  );
}

function detailFrame({ left, top, width, height }: PictureBox, pictureHeight: number): Element {
  const area = {
    x: round(left * PICTURE_WIDTH),
    y: round(top * pictureHeight),
    width: round(width * PICTURE_WIDTH),
    height: round(height * pictureHeight),
    fill: 'none',
  };
  return s(
    'g',
    { className: 'mark-detail' },
    s('rect', { ...area, ...light(HALO) }),
    s('rect', { ...area, ...dark(LINE) }),
  );
}

function round(value: number): number {
  return Number(value.toFixed(1));
}
