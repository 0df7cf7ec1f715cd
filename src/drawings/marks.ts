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
 * @param turns fasteners in the order in which they are tightened: each gets its number
 */
export function marksOverlay(
  layout: MarkLayout,
  detail: PictureBox | null = null,
  turns: readonly DrawingPoint[] = [],
): Element {
  const { left, top, right, bottom } = margins(layout);
  const box = [-left, -top, PICTURE_WIDTH + left + right, layout.height + top + bottom].map(round);
  const leaders = layout.placed.map(({ leader }) => leader);
  const lines = leaders.map(({ from, to }) => `M${place(from)}L${place(to)}`).join('');
  // A stroke without length and with round ends is a dot.
  const dots = [...leaders.map(({ to }) => to), ...layout.also].map((to) => `M${place(to)}h0`).join('');
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
    ...(turns.length > 0 ? [numbers(turns)] : []),
  );
}

/** Radius of a number's disc, and the size of its numeral: 14 pixels on a phone, of two figures 11. */
const DISC = 30;
const NUMERAL = { one: 40, two: 32 };

/** How far apart the middles of two numbers must lie to be told apart. */
export const TURNS_APART = 2 * DISC + 6;

/** A number on each fastener; the first has a heavy rim, so that the eye finds where to begin. */
function numbers(turns: readonly DrawingPoint[]): Element {
  const look = { 'font-weight': 700, 'text-anchor': 'middle', fill: '#111' };
  return s(
    'g',
    { className: 'mark-turns' },
    ...turns.map(({ x, y }, index) => {
      const rim = index === 0 ? 11 : 5;
      const disc = { cx: round(x), cy: round(y), r: DISC - rim / 2, fill: '#fff', ...dark(rim) };
      return s('circle', disc);
    }),
    s(
      'text',
      look,
      ...turns.map(({ x, y }, index) => {
        const size = index < 9 ? NUMERAL.one : NUMERAL.two;
        const place = { x: round(x), y: round(y + size * 0.36), 'font-size': size };
        return s('tspan', place, String(index + 1));
      }),
    ),
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
