import { readFileSync } from 'node:fs';
import { type ReadDrawing, readDrawing } from '../../src/cut/read/read-drawing.ts';
import { contourBounds, perimeter } from '../../src/geometry/contour.ts';
import { distanceToContour } from '../../src/geometry/distance.ts';
import { unite } from '../../src/geometry/point.ts';

/** What is known of a drawing of another program's: see files.json beside them. */
export interface ForeignFile {
  /** The program that wrote it. */
  readonly by: string;
  readonly layers?: readonly string[];
  /** What the guide says of its unit, millimetres. */
  readonly unit?: number;
  /** A part of the cause for which it is refused. */
  readonly refused?: string;
  /** What an outside reader makes of it, millimetres, y up. */
  readonly oracle?: Oracle;
}

export interface Oracle {
  readonly bounds: readonly number[];
  readonly length: number;
  readonly points: readonly (readonly [number, number])[];
}

const folder = new URL('foreign/', import.meta.url);

export const foreignFiles = Object.entries(
  JSON.parse(readFileSync(new URL('files.json', folder), 'utf8')) as Record<string, ForeignFile>,
);

export function foreignText(name: string): string {
  return readFileSync(new URL(name, folder), 'utf8');
}

export function readForeign(name: string, { layers, unit }: ForeignFile): ReturnType<typeof readDrawing> {
  return readDrawing(name, foreignText(name), { layers: layers ?? null, unit: unit ?? null });
}

/** How far what we read lies from what an outside reader sees, mm: points, overall size, and length in parts. */
export function differenceOf(read: ReadDrawing, { bounds, length, points }: Oracle): Record<string, number> {
  const contours = read.shapes.map(({ contour }) => contour);
  const away = ([x, y]: readonly [number, number]): number =>
    Math.min(...contours.map((contour) => distanceToContour(contour, { x, y })));
  const { minX, minY, maxX, maxY } = unite(contours.map(contourBounds));
  const whole = contours.reduce((sum, contour) => sum + perimeter(contour), 0);
  return {
    point: Math.max(...points.map(away)),
    size: Math.max(...[minX, minY, maxX, maxY].map((v, i) => Math.abs(v - (bounds[i] ?? Number.NaN)))),
    length: Math.abs(whole - length) / length,
  };
}
