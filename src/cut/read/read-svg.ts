import type { Point } from '../../geometry/point.ts';
import { arc, line, type Segment } from '../../geometry/segment.ts';
import { circle, rectangle } from '../../geometry/shapes.ts';
import type { ReadSegments } from './read-segments.ts';

const LENGTHS: Readonly<Record<string, number>> = { mm: 1, cm: 10, in: 25.4, pt: 25.4 / 72 };

/** Raised inside this file alone, to leave a path as soon as one part of it cannot be read. */
class Unreadable extends Error {}

/**
 * Reads the path, line, polyline, polygon, rect and circle elements of an SVG file whose width stands in a
 * real unit. Transforms and curves that are no arcs of a circle are refused: they would have to be guessed.
 */
export function readSvg(text: string): ReadSegments {
  const root = /<svg\b[^>]*>/.exec(text)?.[0];
  if (!root) return { ok: false, message: 'this is not an SVG file' };
  if (/\stransform\s*=/.test(text))
    return { ok: false, message: 'a shape is moved by transform=; save it without transforms' };
  const size = /^([\d.]+)(mm|cm|in|pt)$/.exec(attribute(root, 'width') ?? '');
  const box = (attribute(root, 'viewBox') ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const width = box[2] ?? Number.NaN;
  if (!size || !(width > 0))
    return { ok: false, message: 'the file must state its width in mm, cm or in, and a viewBox' };
  const scale = (Number(size[1]) * (LENGTHS[size[2] ?? ''] ?? Number.NaN)) / width;
  try {
    const segments = [
      ...text.matchAll(/<(path|line|polyline|polygon|rect|circle|ellipse|use|image)\b[^>]*>/g),
    ].flatMap(([tag, kind]) => shapeOf(kind ?? '', tag));
    return { ok: true, segments: segments.map((s) => upright(s, scale)) };
  } catch (error) {
    if (error instanceof Unreadable) return { ok: false, message: error.message };
    throw error;
  }
}

function attribute(tag: string, name: string): string | undefined {
  const found = new RegExp(`\\s${name}\\s*=\\s*("([^"]*)"|'([^']*)')`).exec(tag);
  return found?.[2] ?? found?.[3];
}

/** SVG counts y downwards; a template counts it up. */
function upright(segment: Segment, scale: number): Segment {
  const turn = ({ x, y }: Point): Point => ({ x: x * scale, y: -y * scale });
  return segment.kind === 'line'
    ? line(turn(segment.from), turn(segment.to))
    : arc(turn(segment.centre), segment.radius * scale, -segment.start, -segment.sweep);
}

function shapeOf(kind: string, tag: string): readonly Segment[] {
  const number = (name: string): number => {
    const value = Number(attribute(tag, name) ?? 0);
    if (!Number.isFinite(value)) throw new Unreadable(`a ${kind} has a number that cannot be read`);
    return value;
  };
  if (kind === 'line')
    return [line({ x: number('x1'), y: number('y1') }, { x: number('x2'), y: number('y2') })];
  if (kind === 'circle') return circle({ x: number('cx'), y: number('cy') }, number('r')).segments;
  if (kind === 'rect') {
    const corner = { x: number('x'), y: number('y') };
    return rectangle(corner, number('width'), number('height'), number('rx') || number('ry')).segments;
  }
  if (kind === 'path') return pathSegments(attribute(tag, 'd') ?? '');
  if (kind !== 'polyline' && kind !== 'polygon')
    throw new Unreadable(`a ${kind} is neither a line nor an arc of a circle`);
  const all = numbersOf(attribute(tag, 'points') ?? '');
  const points = all.flatMap((x, i) => (i % 2 === 0 ? [{ x, y: all[i + 1] ?? Number.NaN }] : []));
  const ring = kind === 'polygon' ? [...points, ...points.slice(0, 1)] : points;
  return ring.slice(1).map((to, i) => line(ring[i] as Point, to));
}

function numbersOf(text: string): number[] {
  return (text.match(/[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/gi) ?? []).map(Number);
}

/** How many numbers each path command takes; commands that are missing here draw no line and no arc. */
const TAKES: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, A: 7, Z: 0 };

function pathSegments(d: string): Segment[] {
  const segments: Segment[] = [];
  let at: Point = { x: 0, y: 0 };
  let start = at;
  for (const [, letter = '', rest = ''] of d.matchAll(/([a-z])([^a-z]*(?:e[-+]?\d[^a-z]*)*)/gi)) {
    const command = letter.toUpperCase();
    const takes = TAKES[command];
    if (takes === undefined)
      throw new Unreadable(`a path has a curve (${letter}); save the outline as lines and arcs`);
    const values = command === 'A' ? arcNumbers(rest) : numbersOf(rest);
    const base = (): Point => (letter === command ? { x: 0, y: 0 } : at);
    for (let i = 0; i < Math.max(values.length, 1); i += takes || 1) {
      const part = values.slice(i, i + takes);
      if (part.length < takes) throw new Unreadable('a path ends in the middle of a command');
      const to = command === 'Z' ? start : target(command, part, base(), at);
      if (command === 'M' && i === 0) start = to;
      else if (command === 'A') segments.push(arcTo(at, to, part));
      else if (Math.hypot(to.x - at.x, to.y - at.y) > 1e-9) segments.push(line(at, to));
      at = to;
    }
  }
  return segments;
}

function target(command: string, part: readonly number[], base: Point, at: Point): Point {
  const [a = 0, b = 0] = part.slice(-2);
  if (command === 'H') return { x: base.x + (part[0] ?? 0), y: at.y };
  if (command === 'V') return { x: at.x, y: base.y + (part[0] ?? 0) };
  return { x: base.x + a, y: base.y + b };
}

/** The two flags of an arc may stand without a space before what follows (SVG 2, 9.3.9). */
function arcNumbers(text: string): number[] {
  const one =
    /\s*,?\s*([-+]?[\d.]+(?:e[-+]?\d+)?)\s*,?\s*([-+]?[\d.]+(?:e[-+]?\d+)?)\s*,?\s*([-+]?[\d.]+(?:e[-+]?\d+)?)[\s,]*([01])[\s,]*([01])[\s,]*([-+]?[\d.]+(?:e[-+]?\d+)?)\s*,?\s*([-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)/gi;
  return [...text.matchAll(one)].flatMap((found) => found.slice(1).map(Number));
}

/** Centre from end points, SVG 2 appendix B.2.4, for a circle. */
function arcTo(from: Point, to: Point, [rx = 0, ry = 0, , large = 0, sweep = 0]: readonly number[]): Segment {
  if (Math.abs(rx - ry) > 1e-6 * rx)
    throw new Unreadable('a path has an arc of an ellipse; save it as arcs of circles');
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  const radius = Math.max(rx, chord / 2);
  const half = 2 * Math.asin(Math.min(1, chord / 2 / radius));
  const turn = large ? 2 * Math.PI - half : half;
  const signed = sweep ? turn : -turn;
  const rise = chord / 2 / Math.tan(signed / 2);
  const centre = {
    x: (from.x + to.x) / 2 - ((to.y - from.y) / chord) * rise,
    y: (from.y + to.y) / 2 + ((to.x - from.x) / chord) * rise,
  };
  return arc(centre, radius, Math.atan2(from.y - centre.y, from.x - centre.x), signed);
}
