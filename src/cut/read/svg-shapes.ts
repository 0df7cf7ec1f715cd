import type { Point } from '../../geometry/point.ts';
import { circlePiece, type EllipseArc, type Piece } from './piece.ts';
import { Refused } from './refused.ts';
import { readPath } from './svg-path.ts';
import type { SvgElement } from './svg-tree.ts';
import { pixelsOf, readLength, readNumbers } from './svg-values.ts';

/** The viewport that percentages are of, in user units. */
export interface Viewport {
  readonly width: number;
  readonly height: number;
}

/** The basic shapes, and whether each has an inside that could be filled. */
export const SHAPES: Readonly<Record<string, { readonly hasInside: boolean }>> = {
  path: { hasInside: true },
  rect: { hasInside: true },
  circle: { hasInside: true },
  ellipse: { hasInside: true },
  line: { hasInside: false },
  polyline: { hasInside: true },
  polygon: { hasInside: true },
};

/** A length of an element in user units; `null` where it is not said, or said to be `auto`. */
export function svgLength(element: SvgElement, name: string, whole: number): number | null {
  const text = element.attributes.get(name);
  if (text === undefined || text.trim() === 'auto') return null;
  const length = readLength(text);
  const value = length && pixelsOf(length, whole);
  if (value === null || !Number.isFinite(value))
    throw new Refused(
      `a ${element.name} has a ${name} that cannot be read: “${shortened(text)}”`,
      element.line,
    );
  return value;
}

function shortened(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}

/** The pieces of a shape in its own user units (SVG 2, chapter 10). */
export function shapePieces(element: SvgElement, viewport: Viewport): readonly Piece[] {
  const { width, height } = viewport;
  const across = (name: string): number => svgLength(element, name, width) ?? 0;
  const down = (name: string): number => svgLength(element, name, height) ?? 0;
  switch (element.name) {
    case 'line':
      return [
        { kind: 'line', from: { x: across('x1'), y: down('y1') }, to: { x: across('x2'), y: down('y2') } },
      ];
    case 'circle': {
      const r = size(element, 'r', Math.sqrt((width * width + height * height) / 2)) ?? 0;
      return r === 0 ? [] : [circlePiece({ x: across('cx'), y: down('cy') }, r)];
    }
    case 'ellipse': {
      const [rx, ry] = radii(element, viewport);
      return rx === 0 || ry === 0 ? [] : [quarter({ x: across('cx'), y: down('cy') }, rx, ry, 0, 4)];
    }
    case 'rect':
      return rectangle(element, viewport);
    case 'path': {
      const read = readPath(element.attributes.get('d') ?? '');
      if (typeof read === 'string') throw new Refused(read, element.line);
      return read;
    }
    default:
      return polygonal(element);
  }
}

/** A length that may not be negative. */
function size(element: SvgElement, name: string, whole: number): number | null {
  const value = svgLength(element, name, whole);
  if (value !== null && value < 0)
    throw new Refused(`a ${element.name} has a negative ${name}`, element.line);
  return value;
}

/** Where one radius is not said, it is as the other. */
function radii(element: SvgElement, { width, height }: Viewport): readonly [number, number] {
  const [rx, ry] = [size(element, 'rx', width), size(element, 'ry', height)];
  return [rx ?? ry ?? 0, ry ?? rx ?? 0];
}

/** Some quarters of an ellipse, from one that begins to the right (0), below (1), to the left (2) or above (3). */
function quarter(centre: Point, rx: number, ry: number, from: number, quarters = 1): EllipseArc {
  const [start, sweep] = [(from * Math.PI) / 2, (quarters * Math.PI) / 2];
  return { kind: 'ellipse', centre, u: { x: rx, y: 0 }, v: { x: 0, y: ry }, start, sweep };
}

function rectangle(element: SvgElement, viewport: Viewport): Piece[] {
  const [x, y] = [
    svgLength(element, 'x', viewport.width) ?? 0,
    svgLength(element, 'y', viewport.height) ?? 0,
  ];
  const [width, height] = [
    size(element, 'width', viewport.width) ?? 0,
    size(element, 'height', viewport.height) ?? 0,
  ];
  if (width === 0 || height === 0) return [];
  const [rx, ry] = radii(element, viewport);
  const [a, b] = rx === 0 || ry === 0 ? [0, 0] : [Math.min(rx, width / 2), Math.min(ry, height / 2)];
  const [right, bottom] = [x + width, y + height];
  const side = (x1: number, y1: number, x2: number, y2: number): Piece => ({
    kind: 'line',
    from: { x: x1, y: y1 },
    to: { x: x2, y: y2 },
  });
  const corner = (cx: number, cy: number, from: number): Piece[] =>
    a === 0 ? [] : [quarter({ x: cx, y: cy }, a, b, from)];
  return [
    side(x + a, y, right - a, y),
    ...corner(right - a, y + b, 3),
    side(right, y + b, right, bottom - b),
    ...corner(right - a, bottom - b, 0),
    side(right - a, bottom, x + a, bottom),
    ...corner(x + a, bottom - b, 1),
    side(x, bottom - b, x, y + b),
    ...corner(x + a, y + b, 2),
  ];
}

function polygonal(element: SvgElement): Piece[] {
  const all = readNumbers(element.attributes.get('points') ?? '');
  if (!all || all.length % 2 === 1 || !all.every(Number.isFinite))
    throw new Refused(`a ${element.name} has points that cannot be read`, element.line);
  const points = all.flatMap((x, i) => (i % 2 === 0 ? [{ x, y: all[i + 1] ?? 0 }] : []));
  const ring = element.name === 'polygon' ? [...points, ...points.slice(0, 1)] : points;
  return ring.slice(1).map((to, i) => ({ kind: 'line', from: ring[i] as Point, to }));
}
