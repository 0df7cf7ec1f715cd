/** Fasteners, plugs, tools and hands that the drawings share. Each stands at its own origin until placed. */
import { box, circle, INK, NARROW, n, path, place, poly } from './pen.ts';

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
