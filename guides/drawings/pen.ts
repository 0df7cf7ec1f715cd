/**
 * The pen of the demo shop: two line widths, one accent, plain shapes with presentation attributes only.
 * Every helper returns SVG text; coordinates are in the 640 × 400 box of a drawing, y down.
 */

/** Visible edges, and everything finer, in drawing units. */
export const WIDE = 3;
export const NARROW = 1.3;
export const INK = '#1b1f22';
export const ACCENT = '#0b6e5f';
export const TINT = '#bfe3da';
export const GREY = '#e8ebea';
export const SHADE = '#c9cfcd';

/**
 * How a shape is drawn: `part` is what the step is about, `item` what the hand takes, `face` a plain face of what is
 * round it, `back` what stands behind it, `glass` a pane, `shade` an opening or a dark face, `detail` a fine
 * line, `bold` a wide line, `hidden` what cannot be seen from here.
 */
export type Ink =
  | 'part'
  | 'item'
  | 'face'
  | 'back'
  | 'glass'
  | 'shade'
  | 'detail'
  | 'bold'
  | 'hidden'
  | 'glove';

const INKS: Readonly<Record<Ink, string>> = {
  part: attributes('#fff', INK, WIDE),
  item: attributes(TINT, INK, WIDE),
  face: attributes('#fff', INK, NARROW),
  back: attributes(GREY, INK, NARROW),
  glass: attributes('#dfe7ea', INK, NARROW),
  shade: attributes(SHADE, INK, NARROW),
  detail: attributes('none', INK, NARROW),
  bold: attributes('none', INK, WIDE),
  hidden: `${attributes('none', INK, NARROW)} stroke-dasharray="7 4"`,
  glove: attributes('#fff', INK, 2),
};

function attributes(fill: string, stroke: string, width: number): string {
  return `fill="${fill}" stroke="${stroke}" stroke-width="${width}" stroke-linejoin="round" stroke-linecap="round"`;
}

/** Rounds to a tenth, so that the files stay small and the same on every machine. */
export function n(value: number): string {
  return String(Math.round(value * 10) / 10);
}

export const path = (d: string, ink: Ink = 'part'): string => `<path d="${d}" ${INKS[ink]}/>`;

export const circle = (x: number, y: number, r: number, ink: Ink = 'part'): string =>
  `<circle cx="${n(x)}" cy="${n(y)}" r="${n(r)}" ${INKS[ink]}/>`;

export const ellipse = (x: number, y: number, rx: number, ry: number, ink: Ink = 'part'): string =>
  `<ellipse cx="${n(x)}" cy="${n(y)}" rx="${n(rx)}" ry="${n(ry)}" ${INKS[ink]}/>`;

/** A rectangle by its left upper corner. */
export const box = (x: number, y: number, w: number, h: number, ink: Ink = 'part', r = 0): string =>
  `<rect x="${n(x)}" y="${n(y)}" width="${n(w)}" height="${n(h)}" rx="${n(r)}" ${INKS[ink]}/>`;

/** A run of straight lines through `x,y x,y …`; closed when `close` is set. */
export function poly(
  points: readonly (readonly [number, number])[],
  ink: Ink = 'part',
  close = true,
): string {
  const d = points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${n(x)} ${n(y)}`).join('');
  return path(close ? `${d}Z` : d, ink);
}

/** A straight tube, bar or rod between two points, by its width; its ends are square. */
export function rod(
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  width: number,
  ink: Ink = 'part',
): string {
  const length = Math.hypot(x2 - x1, y2 - y1);
  const [dx, dy] = [((y2 - y1) / length) * (width / 2), ((x1 - x2) / length) * (width / 2)];
  return poly(
    [
      [x1 + dx, y1 + dy],
      [x2 + dx, y2 + dy],
      [x2 - dx, y2 - dy],
      [x1 - dx, y1 - dy],
    ],
    ink,
  );
}

/** A flat ring, through which what lies behind it is seen. */
export function ring(x: number, y: number, outer: number, inner: number, ink: Ink = 'part'): string {
  const round = (r: number, sweep: 0 | 1): string =>
    `M${n(x - r)} ${n(y)}A${r} ${r} 0 1 ${sweep} ${n(x + r)} ${n(y)}A${r} ${r} 0 1 ${sweep} ${n(x - r)} ${n(y)}Z`;
  return path(round(outer, 1) + round(inner, 0), ink);
}

/** Moves, turns (degrees, clockwise) and scales what it is given. */
export function place(
  x: number,
  y: number,
  content: string,
  turn = 0,
  scale: number | readonly [number, number] = 1,
): string {
  const [sx, sy] = typeof scale === 'number' ? [scale, scale] : scale;
  const rotate = turn === 0 ? '' : ` rotate(${n(turn)})`;
  const size = sx === 1 && sy === 1 ? '' : ` scale(${sx} ${sy})`;
  return `<g transform="translate(${n(x)} ${n(y)})${rotate}${size}">${content}</g>`;
}

/**
 * A part of a view as seen from nearer: its place `x,y` comes to the left upper corner, all of it `scale` times as
 * large, its lines no wider than before. So the neighbours stand in a close view as they stand in the whole.
 */
export const closer = (x: number, y: number, scale: number, view: string): string =>
  place(
    -x * scale,
    -y * scale,
    view.replace(/stroke-width="([\d.]+)"/g, (_, width) => `stroke-width="${n(Number(width) / scale)}"`),
    0,
    scale,
  );

/** What is drawn of the left half of a 640 wide view, and the same mirrored on the right. */
export const both = (left: string): string => left + place(640, 0, left, 0, [-1, 1]);

/** A solid arrow for motion from one point to another. */
export function arrow(x1: number, y1: number, x2: number, y2: number, width = 12): string {
  const length = Math.hypot(x2 - x1, y2 - y1);
  const head = Math.min(width * 2, length * 0.6);
  const w = width / 2;
  const d = `M0 ${n(-w)}H${n(length - head)}V${n(-w * 2.2)}L${n(length)} 0L${n(length - head)} ${n(w * 2.2)}V${n(w)}H0Z`;
  const turn = (Math.atan2(y2 - y1, x2 - x1) * 180) / Math.PI;
  return place(
    x1,
    y1,
    `<path d="${d}" fill="${ACCENT}" stroke="#fff" stroke-width="2" stroke-linejoin="round"/>`,
    turn,
  );
}

/** An arrow that goes round `x,y` from one angle to another (degrees, 0 to the right, clockwise). */
export function turnArrow(x: number, y: number, r: number, from: number, to: number): string {
  const at = (angle: number, radius = r): [number, number] => [
    x + radius * Math.cos((angle * Math.PI) / 180),
    y + radius * Math.sin((angle * Math.PI) / 180),
  ];
  const way = to > from ? 1 : -1;
  const [x1, y1] = at(from);
  const [x2, y2] = at(to);
  const tip = at(to + (way * 1000) / r);
  const [outer, inner] = [at(to, r + 10), at(to, r - 10)];
  const large = Math.abs(to - from) > 180 ? 1 : 0;
  const arc = `M${n(x1)} ${n(y1)}A${n(r)} ${n(r)} 0 ${large} ${way > 0 ? 1 : 0} ${n(x2)} ${n(y2)}`;
  const head = [outer, tip, inner].map(([px, py]) => `${n(px)} ${n(py)}`).join('L');
  return (
    `<path d="${arc}" fill="none" stroke="#fff" stroke-width="11"/>` +
    `<path d="${arc}" fill="none" stroke="${ACCENT}" stroke-width="7"/><path d="M${head}Z" fill="${ACCENT}"/>`
  );
}

/** Draws motion forwards or backwards. */
type Motion = {
  readonly arrow: typeof arrow;
  readonly turn: typeof turnArrow;
};

const forwards: Motion = { arrow, turn: turnArrow };

const backwards: Motion = {
  arrow: (x1, y1, x2, y2, width) => arrow(x2, y2, x1, y1, width),
  turn: (x, y, r, from, to) => turnArrow(x, y, r, to, from),
};

/** The arrows of a drawing that is undone later: two layers, of which a page shows one. Once in a drawing. */
export const way = (draw: (motion: Motion) => string): string =>
  `<g id="way">${draw(forwards)}</g><g id="way-back" display="none">${draw(backwards)}</g>`;

/** A line in the accent, for what is to be marked, cut or laid. */
export const accentLine = (d: string, dash = false, width = WIDE): string =>
  `<path d="${d}" fill="none" stroke="${ACCENT}" stroke-width="${width}" stroke-linejoin="round" stroke-linecap="round"${dash ? ' stroke-dasharray="10 5"' : ''}/>`;

/** A centre line: long dash, dot. */
export const centreLine = (x1: number, y1: number, x2: number, y2: number): string =>
  `<path d="M${n(x1)} ${n(y1)}L${n(x2)} ${n(y2)}" fill="none" stroke="${INK}" stroke-width="${NARROW}" stroke-dasharray="18 4 3 4"/>`;

/** A whole drawing on white, so that it can be read on a dark page too. */
export function sheet(...content: readonly string[]): string {
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 640 400" width="640" height="400">\n` +
    `<rect width="640" height="400" fill="#fff"/>\n${content.join('\n')}\n</svg>\n`
  );
}

/** A small picture on white, of one thing. */
export const small = (content: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 240 160" width="240" height="160"><rect width="240" height="160" fill="#fff"/>${content}</svg>\n`;

/** A cable or loom: a wide double line along a path. */
export const cable = (d: string): string =>
  `<path d="${d}" fill="none" stroke="${INK}" stroke-width="${WIDE * 3.4}" stroke-linejoin="round" stroke-linecap="round"/>` +
  `<path d="${d}" fill="none" stroke="${TINT}" stroke-width="${WIDE * 1.6}" stroke-linejoin="round" stroke-linecap="round"/>`;

/** A part of a drawing that is seen through a window of the form `d`; `shift` moves what is seen to the right. */
export const window = (id: string, d: string, content: string, shift = 0): string =>
  `<clipPath id="${id}"><path d="${d}"/></clipPath>` +
  `<g clip-path="url(#${id})">${shift === 0 ? content : place(shift, 0, content)}</g>`;

/** The form of a window with square corners. */
export const pane = (x: number, y: number, w: number, h: number): string => `M${x} ${y}h${w}v${h}h${-w}Z`;
