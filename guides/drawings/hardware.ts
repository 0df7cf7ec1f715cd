/** Fasteners, plugs, tools and hands that the drawings share. Each stands at its own origin until placed. */
import { ACCENT, box, circle, ellipse, INK, NARROW, n, path, place, poly } from './pen.ts';

function ring(sides: number, r: number, start = 0): [number, number][] {
  return Array.from({ length: sides }, (_, i) => {
    const angle = ((start + (i * 360) / sides) * Math.PI) / 180;
    return [r * Math.cos(angle), r * Math.sin(angle)];
  });
}

/** The head of a hexagon bolt or screw with its flange, from above; `r` is the flange. */
export const hexHead = (x: number, y: number, r = 12): string =>
  place(x, y, circle(0, 0, r, 'item') + poly(ring(6, r * 0.72), 'detail'));

/** A nut on its stud, from above. */
export const nut = (x: number, y: number, r = 13): string =>
  place(x, y, circle(0, 0, r, 'item') + poly(ring(6, r * 0.8), 'detail') + circle(0, 0, r * 0.4, 'shade'));

/** The head of a six-lobe screw from above. */
export function lobeHead(x: number, y: number, r = 11): string {
  const star = Array.from({ length: 12 }, (_, i) => {
    const [px, py] = ring(12, i % 2 === 0 ? r * 0.62 : r * 0.38)[i] ?? [0, 0];
    return [px, py] as [number, number];
  });
  return place(x, y, circle(0, 0, r, 'item') + poly(star, 'detail'));
}

/** The head of a centre-pin clip from above. */
export const clipHead = (x: number, y: number, r = 12): string =>
  place(x, y, circle(0, 0, r, 'item') + circle(0, 0, r * 0.5, 'part'));

/** A bolt or screw from the side, head up at the origin, shank down. */
export function boltSide(length = 40, r = 12): string {
  const threads = Array.from({ length: Math.floor((length - 8) / 6) }, (_, i) =>
    path(`M${n(-r * 0.45)} ${n(10 + i * 6)}L${n(r * 0.45)} ${n(13 + i * 6)}`, 'detail'),
  );
  return (
    box(-r * 0.45, 0, r * 0.9, length, 'item') +
    threads.join('') +
    box(-r, -4, r * 2, 5, 'item', 2) +
    box(-r * 0.7, -14, r * 1.4, 10, 'item', 2) +
    path(`M${n(-r * 0.25)} -14V-4M${n(r * 0.25)} -14V-4`, 'detail')
  );
}

/** A plug with its latch and wires; the mating face is at the origin and looks to the right. */
export function plug(scale = 1): string {
  const wires = [-9, -3, 3, 9].map((y) =>
    path(`M-46 ${y}C-70 ${y} -80 ${y * 1.4 + 8} -104 ${y * 1.2 + 16}`, 'detail'),
  );
  return place(
    0,
    0,
    wires.join('') +
      box(-46, -16, 46, 32, 'item', 3) +
      box(-8, -12, 12, 24, 'part', 1) +
      box(-38, -24, 26, 8, 'part', 2) +
      path('M-40 -8V8M-34 -8V8', 'detail'),
    0,
    scale,
  );
}

/** A small plug, for drawings where it is one of many; wires to the left. */
export const smallPlug = (x: number, y: number, turn = 0): string =>
  place(
    x,
    y,
    box(-20, -9, 24, 18, 'item', 2) +
      path('M-14 -9V9M4 -5H9M4 5H9', 'detail') +
      box(-14, -14, 12, 5, 'part', 1),
    turn,
  );

/** A trim lever from the side: tip at the origin, handle to the right. */
export const lever = (x: number, y: number, turn = 0): string =>
  place(
    x,
    y,
    path('M0 0C20 -9 36 -9 60 -7L150 -9C164 -9 164 11 150 11L60 7C40 6 20 4 0 0Z', 'part') +
      path('M70 -3H140M70 3H140', 'detail'),
    turn,
  );

/** A forked lifter from the side: tip at the origin, handle to the right. */
export const lifter = (x: number, y: number, turn = 0): string =>
  place(
    x,
    y,
    path('M0 -1L34 -10H52V6H34L4 3Z', 'part') + box(52, -8, 78, 16, 'part', 7) + path('M62 0H120', 'detail'),
    turn,
  );

/** A ratchet with a socket from the side: the socket's mouth at the origin looks down, the handle goes right. */
export const ratchet = (x: number, y: number, turn = 0): string =>
  place(
    x,
    y,
    box(-13, -34, 26, 34, 'part', 2) +
      path('M-13 -12H13', 'detail') +
      box(-7, -42, 14, 8, 'back') +
      path('M-18 -42C-24 -42 -24 -62 -18 -62H20L140 -58C152 -58 152 -46 140 -46L20 -42Z', 'part') +
      path('M66 -56V-46M72 -56V-46M78 -56V-46', 'detail'),
    turn,
  );

/**
 * A gloved hand that grips an edge: four fingers over the edge at the origin, the wrist going down.
 * The fingers point up.
 */
export function gripHand(x: number, y: number, turn = 0, mirror = false): string {
  const fingers = [-24, -8, 8, 24].map((fx, i) =>
    box(fx - 8, i === 0 || i === 3 ? -14 : -20, 16, 48, 'glove', 8),
  );
  return place(
    x,
    y,
    path('M-26 20C-32 44 -26 62 -20 76V96H24V76C32 60 36 44 32 20Z', 'glove') +
      path('M30 34C46 26 54 12 58 0C62 -10 48 -16 43 -6C40 2 36 10 30 14Z', 'glove') +
      box(-24, 92, 52, 22, 'part', 4) +
      fingers.join(''),
    turn,
    mirror ? [-1, 1] : 1,
  );
}

/** A gloved hand with thumb and finger together at the origin, the wrist going right. */
export const pinchHand = (x: number, y: number, turn = 0, mirror = false): string =>
  place(
    x,
    y,
    path('M40 26C60 44 76 40 96 34L140 34V-28H96C86 -36 66 -42 52 -36L40 -24Z', 'glove') +
      path('M0 4C-6 14 4 20 14 18L54 24C66 20 64 6 54 4L16 4Z', 'glove') +
      path('M0 -2C-8 -12 2 -20 12 -18L40 -26C50 -34 66 -32 70 -24C72 -14 60 -8 50 -8L16 -2Z', 'glove') +
      path('M70 -24C84 -22 88 -12 80 -6C74 -2 64 -2 56 -4M78 -6C90 0 90 12 80 16', 'detail') +
      box(136, -34, 24, 74, 'part', 4),
    turn,
    mirror ? [1, -1] : 1,
  );

/** A flat open hand, palm up under a load at the origin, the wrist going down and right. */
export const palmHand = (x: number, y: number, turn = 0, mirror = false): string =>
  place(
    x,
    y,
    path('M-56 2C-64 2 -64 14 -56 15L-10 18C-4 34 14 44 30 46L70 62L84 34L46 14C40 2 30 0 20 0Z', 'glove') +
      path('M-6 2C-2 -8 10 -16 20 -14C28 -12 26 -4 20 -2L10 6', 'glove') +
      poly(
        [
          [64, 66],
          [84, 28],
          [104, 38],
          [84, 76],
        ],
        'part',
      ),
    turn,
    mirror ? [-1, 1] : 1,
  );

/** The van in plan, front up, with a spot where the drawing was taken: `at` is 0–1 across and along. */
export function locator(x: number, y: number, across: number, along: number): string {
  return place(
    x,
    y,
    `<path d="M4 10C6 2 30 2 32 10V70C32 76 4 76 4 70Z" fill="#fff" stroke="${INK}" stroke-width="${NARROW}"/>` +
      `<path d="M6 22C12 17 24 17 30 22M4 28V66M32 28V66" fill="none" stroke="${INK}" stroke-width="${NARROW}"/>` +
      `<circle cx="${n(4 + 28 * across)}" cy="${n(5 + 70 * along)}" r="6" fill="${ACCENT}" stroke="#fff" stroke-width="1.5"/>`,
  );
}

/** Masking tape: a strip with torn ends. */
export const tape = (x: number, y: number, w: number, h: number): string =>
  `<path d="M${n(x)} ${n(y)}H${n(x + w)}l-4 ${n(h / 4)} 4 ${n(h / 4)} -4 ${n(h / 4)} 4 ${n(h / 4)}H${n(x)}l4 ${n(-h / 4)} -4 ${n(-h / 4)} 4 ${n(-h / 4)}Z" fill="#f3ecd2" stroke="${INK}" stroke-width="${NARROW}"/>`;

/** Hatching at 45 degrees inside a box: the waste side of a cut. */
export function hatch(x: number, y: number, w: number, h: number, gap = 14): string {
  const lines: string[] = [];
  for (let s = gap; s < w + h; s += gap) {
    const [x1, y1] = s < h ? [x, y + s] : [x + s - h, y + h];
    const [x2, y2] = s < w ? [x + s, y] : [x + w, y + s - w];
    lines.push(`M${n(x1)} ${n(y1)}L${n(x2)} ${n(y2)}`);
  }
  return path(lines.join(''), 'detail');
}

/** A grip on a round lamp, seen from the front. */
export const lampFront = (x: number, y: number, r = 40): string =>
  circle(x, y, r, 'part') +
  circle(x, y, r * 0.82, 'back') +
  ellipse(x, y, r * 0.3, r * 0.3, 'part') +
  path(`M${n(x - r * 0.5)} ${n(y - r * 0.5)}L${n(x - r * 0.2)} ${n(y - r * 0.2)}`, 'detail');

/** A fir-tree clip from the side: head at the origin, stem up. */
export const firTree = (): string =>
  path(
    'M-4 0L-4 -34L0 -42L4 -34V0M-10 -8L-4 -12M10 -8L4 -12M-10 -18L-4 -22M10 -18L4 -22M-8 -28L-4 -31M8 -28L4 -31',
    'bold',
  ) + box(-12, -2, 24, 7, 'item', 2);

/** A torque wrench seen along the bolt: the drive at the origin, the handle to the right. */
export const torqueWrench = (): string =>
  path(
    'M-16 0A16 16 0 0 1 16 -8L60 -6H150L158 -10H236C246 -10 246 10 236 10H158L150 6H60L16 8A16 16 0 0 1 -16 0Z',
    'part',
  ) +
  circle(0, 0, 8, 'shade') +
  path('M172 -10V10M182 -10V10M192 -10V10M202 -10V10M212 -10V10M96 -6V6M104 -6V6', 'detail');

/** The head of a cross-recess screw from above. */
export const crossHead = (x: number, y: number, r = 11): string =>
  place(
    x,
    y,
    circle(0, 0, r, 'item') +
      path(`M${n(-r * 0.55)} 0H${n(r * 0.55)}M0 ${n(-r * 0.55)}V${n(r * 0.55)}`, 'bold'),
  );

/** A flat gloved hand from the side, palm up under a load at the origin, the forearm going down and right. */
export const flatHand = (x: number, y: number, mirror = false): string =>
  place(
    x,
    y,
    path(
      'M-34 1H22C38 2 46 10 52 22L86 96L50 110L22 52C14 38 4 32 -10 24C-20 20 -32 18 -40 14C-46 8 -42 1 -34 1Z',
      'glove',
    ) + path('M-12 10C2 10 14 12 24 20M42 92L78 78', 'detail'),
    0,
    mirror ? [-1, 1] : 1,
  );
