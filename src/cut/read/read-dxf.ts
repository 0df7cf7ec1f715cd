import type { Point } from '../../geometry/point.ts';
import { arc, line, type Segment } from '../../geometry/segment.ts';
import { arcOfBulge } from '../shape/bulge.ts';
import type { ReadSegments } from './read-segments.ts';

/** Millimetres per unit for each `$INSUNITS` code that a drawing of a part may use. */
const UNITS: Readonly<Record<string, number>> = {
  1: 25.4,
  2: 304.8,
  4: 1,
  5: 10,
  6: 1000,
  9: 0.0254,
  14: 100,
};

type Group = readonly [code: number, value: string];

/**
 * Reads LINE, ARC, CIRCLE and LWPOLYLINE of an ASCII DXF file. Anything else that draws is refused, since
 * leaving it out would change the shape; text, dimensions and points draw nothing that is cut.
 */
export function readDxf(text: string): ReadSegments {
  const groups = groupsOf(text);
  if (!groups) return { ok: false, message: 'this is not an ASCII DXF file' };
  const at = groups.findIndex(([code, value]) => code === 9 && value === '$INSUNITS');
  const scale = UNITS[groups[at + 1]?.[1] ?? ''];
  if (at < 0 || !scale)
    return { ok: false, message: 'the file does not say its units ($INSUNITS); save it in millimetres' };
  const start = groups.findIndex(([code, value]) => code === 2 && value === 'ENTITIES');
  if (start < 0) return { ok: false, message: 'the file has no ENTITIES section' };
  // Half a drawing closes to a shape too, and it is the wrong one.
  if (!groups.some(([code, value]) => code === 0 && value === 'EOF'))
    return { ok: false, message: 'the file breaks off before its end (it has no EOF); fetch it again' };
  const segments: Segment[] = [];
  for (const entity of entitiesOf(groups.slice(start + 1))) {
    const read = readEntity(entity, scale);
    if (typeof read === 'string') return { ok: false, message: read };
    segments.push(...read);
  }
  return { ok: true, segments };
}

function groupsOf(text: string): Group[] | null {
  const lines = text.split(/\r\n|\n|\r/);
  const groups: Group[] = [];
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const code = Number(lines[i]?.trim() || Number.NaN);
    if (!Number.isInteger(code)) return null;
    groups.push([code, lines[i + 1]?.trim() ?? '']);
  }
  return groups.length > 0 ? groups : null;
}

function entitiesOf(groups: readonly Group[]): Group[][] {
  const entities: Group[][] = [];
  for (const group of groups) {
    if (group[0] === 0 && group[1] === 'ENDSEC') break;
    if (group[0] === 0) entities.push([]);
    entities.at(-1)?.push(group);
  }
  return entities;
}

const SILENT = new Set(['TEXT', 'MTEXT', 'DIMENSION', 'POINT', 'LEADER', 'VIEWPORT']);

function readEntity(entity: readonly Group[], scale: number): Segment[] | string {
  const kind = entity[0]?.[1] ?? '';
  const value = (code: number): number => Number(entity.find(([c]) => c === code)?.[1] ?? Number.NaN);
  const point = (x: number): Point => ({ x: value(x) * scale, y: value(x + 10) * scale });
  if (SILENT.has(kind)) return [];
  if (value(230) < 0) return `a ${kind} is drawn from behind; save the drawing seen from the front`;
  const segments = readShape(kind, entity, point, value, scale);
  if (!segments) return `a ${kind} is neither a line nor an arc; save the outline as lines and arcs`;
  const sound = segments.every((s) =>
    Object.values(s).every((v) => typeof v !== 'number' || Number.isFinite(v)),
  );
  return sound ? segments : `a ${kind} has a number that cannot be read`;
}

function readShape(
  kind: string,
  entity: readonly Group[],
  point: (code: number) => Point,
  value: (code: number) => number,
  scale: number,
): Segment[] | null {
  if (kind === 'LINE') return [line(point(10), point(11))];
  if (kind === 'CIRCLE')
    return [
      arc(point(10), value(40) * scale, 0, Math.PI),
      arc(point(10), value(40) * scale, Math.PI, Math.PI),
    ];
  if (kind === 'ARC') {
    const turn = (((value(51) - value(50)) % 360) + 360) % 360 || 360;
    return [arc(point(10), value(40) * scale, (value(50) * Math.PI) / 180, (turn * Math.PI) / 180)];
  }
  return kind === 'LWPOLYLINE' ? polyline(entity, scale) : null;
}

function polyline(entity: readonly Group[], scale: number): Segment[] {
  const vertices: { x: number; y: number; bulge: number }[] = [];
  let closed = false;
  for (const [code, text] of entity) {
    const last = vertices.at(-1);
    if (code === 70) closed = (Number(text) & 1) === 1;
    if (code === 10) vertices.push({ x: Number(text) * scale, y: 0, bulge: 0 });
    if (code === 20 && last) last.y = Number(text) * scale;
    if (code === 42 && last) last.bulge = Number(text);
  }
  return vertices.flatMap((vertex, i) => {
    const next = vertices[i + 1] ?? (closed ? vertices[0] : undefined);
    if (!next || Math.hypot(next.x - vertex.x, next.y - vertex.y) < 1e-9) return [];
    const [from, to] = [vertex, next].map(({ x, y }) => ({ x, y })) as [Point, Point];
    return [vertex.bulge === 0 ? line(from, to) : arcOfBulge(from, to, vertex.bulge)];
  });
}
