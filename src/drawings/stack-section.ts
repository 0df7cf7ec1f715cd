import type { Element } from 'hast';
import { s } from 'hastscript';
import { NARROW, WIDE } from './shapes.ts';

/** A piece on a bolt, as the section draws it. */
export interface StackPiece {
  /** Its letter in the key. */
  readonly letter: string;
  /** `clamped` is what the bolt is there to hold, drawn hatched and beyond the others. */
  readonly shape: 'clamped' | 'ring' | 'nut';
  /** Along the bolt, in millimetres; `null` where none is stated. */
  readonly length: number | null;
}

/** The middle of the bolt, and half heights of what is drawn about it; units of the drawing. */
const AXIS = 92;
const SHANK = 9;
const HALF = { head: 24, ring: 31, nut: 24, clamped: 50 } as const;
const HEAD = 20;
/** A piece is never drawn so thin that two letters touch, nor so long that the drawing leaves the page. */
const LEAST = 22;
const MOST = 96;
const PER_MM = 3;
const UNSTATED = 30;
const EDGE = 8;

/**
 * The section through a bolt and all that lies on it, head on the left. Heights are not to scale; lengths are,
 * within what can be drawn. Cut parts are hatched one way and the other by turns (ISO 128-50).
 *
 * @param boltLetter the bolt's own letter in the key
 */
export function stackSection(boltLetter: string, pieces: readonly StackPiece[]): Element {
  const from = EDGE + HEAD;
  const widths = pieces.map(({ length }) =>
    length === null ? UNSTATED : Math.min(MOST, Math.max(LEAST, length * PER_MM)),
  );
  const starts = widths.map(
    (_, index) => from + widths.slice(0, index).reduce((sum, width) => sum + width, 0),
  );
  const end = from + widths.reduce((sum, width) => sum + width, 0);
  const width = Math.round(end + 26);
  const height = AXIS + HALF.clamped + EDGE;
  return s(
    'svg',
    {
      className: 'stack-section',
      viewBox: `0 0 ${width} ${height}`,
      width,
      height,
      role: 'img',
      ariaLabel: `Section through the bolt, from its head: ${[boltLetter, ...pieces.map(({ letter }) => letter)].join(', ')}`,
    },
    bar(EDGE, HEAD, HALF.head),
    ...letterOver(boltLetter, EDGE + HEAD / 2, AXIS - HALF.head),
    ...pieces.flatMap((piece, index) => drawn(piece, starts[index] ?? 0, widths[index] ?? 0, index)),
    s('path', {
      d: `M${from} ${AXIS - SHANK}H${end + 12}l4 4V${AXIS + SHANK - 4}l-4 4H${from}`,
      fill: 'none',
      stroke: 'currentColor',
      'stroke-width': WIDE,
    }),
    // The axis as a long-dashed dotted narrow line (ISO 128, type 04.1).
    s('path', {
      d: `M2 ${AXIS}H${width - 2}`,
      fill: 'none',
      stroke: 'currentColor',
      'stroke-width': NARROW,
      'stroke-dasharray': '12 3 2 3',
    }),
  );
}

function drawn({ letter, shape }: StackPiece, x: number, width: number, index: number): Element[] {
  const half = HALF[shape];
  const above = AXIS - half;
  return [
    ...(shape === 'nut' ? [] : [hatching(x, width, half, index % 2 === 1)]),
    bar(x, width, half),
    ...(shape === 'nut' ? [line(x, AXIS - half / 2, width), line(x, AXIS + half / 2, width)] : []),
    ...letterOver(letter, x + width / 2, above),
  ];
}

function bar(x: number, width: number, half: number): Element {
  const look = { fill: 'none', stroke: 'currentColor', 'stroke-width': WIDE };
  return s('rect', { x: round(x), y: AXIS - half, width: round(width), height: half * 2, ...look });
}

function line(x: number, y: number, width: number): Element {
  return s('path', {
    d: `M${round(x)} ${y}h${round(width)}`,
    stroke: 'currentColor',
    'stroke-width': NARROW,
  });
}

/** Hatching at 45°, above and below the shank, cut at the edges of its piece. */
function hatching(x: number, width: number, half: number, falling: boolean): Element {
  const lines: string[] = [];
  for (const [top, bottom] of [
    [AXIS - half, AXIS - SHANK],
    [AXIS + SHANK, AXIS + half],
  ] as const) {
    const tall = bottom - top;
    for (let offset = 7 - tall; offset < width; offset += 7) {
      const left = Math.max(0, offset);
      const right = Math.min(width, offset + tall);
      if (right <= left) continue;
      const up = (at: number) => (falling ? top + (at - offset) : bottom - (at - offset));
      lines.push(`M${round(x + left)} ${round(up(left))}L${round(x + right)} ${round(up(right))}`);
    }
  }
  return s('path', {
    d: lines.join(''),
    fill: 'none',
    stroke: 'currentColor',
    'stroke-width': NARROW * 0.75,
  });
}

function letterOver(letter: string, x: number, top: number): Element[] {
  return [
    s('path', {
      d: `M${round(x)} 24V${top}`,
      fill: 'none',
      stroke: 'currentColor',
      'stroke-width': NARROW,
    }),
    s(
      'text',
      {
        x: round(x),
        y: 19,
        'font-size': 17,
        'font-weight': 700,
        'text-anchor': 'middle',
        fill: 'currentColor',
      },
      letter,
    ),
  ];
}

function round(value: number): number {
  return Number(value.toFixed(1));
}
