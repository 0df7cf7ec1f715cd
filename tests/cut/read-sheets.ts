import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { Point } from '../../src/geometry/point.ts';

const MM = 25.4 / 72;

/** A line of a sheet as pdf.js, which was written by others, reads it: millimetres from the lower left corner. */
export interface InkPath {
  readonly width: number;
  readonly dash: readonly number[];
  readonly lines: readonly (readonly [Point, Point])[];
  /** All points of the path, those that steer its curves left out. */
  readonly points: readonly Point[];
  readonly curved: boolean;
}

export interface InkText {
  readonly text: string;
  readonly at: Point;
  /** Where it ends: to the right of its beginning, or above it where it reads upwards. */
  readonly end: Point;
}

export interface InkPage {
  readonly label: string;
  readonly width: number;
  readonly height: number;
  readonly paths: readonly InkPath[];
  readonly texts: readonly InkText[];
}

/** Reads every page of a file of sheets. */
export async function readSheets(bytes: Uint8Array): Promise<InkPage[]> {
  const document = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const labels = (await document.getPageLabels()) ?? [];
  const pages: InkPage[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const [, , width = 0, height = 0] = page.view;
    const { items } = await page.getTextContent();
    const texts = items.flatMap((item): InkText[] => {
      if (!('str' in item) || item.str.trim() === '') return [];
      const [a, b, , , x, y] = item.transform as number[];
      const at = { x: (x ?? 0) * MM, y: (y ?? 0) * MM };
      const long = item.width * MM;
      const upward = Math.abs(b ?? 0) > Math.abs(a ?? 0);
      return [
        { text: item.str, at, end: upward ? { x: at.x, y: at.y + long } : { x: at.x + long, y: at.y } },
      ];
    });
    const { fnArray, argsArray } = await page.getOperatorList();
    pages.push({
      label: labels[number - 1] ?? '',
      width: width * MM,
      height: height * MM,
      paths: pathsOf(fnArray, argsArray),
      texts,
    });
  }
  await document.destroy();
  return pages;
}

function pathsOf(operators: readonly number[], args: readonly unknown[]): InkPath[] {
  const paths: InkPath[] = [];
  let [width, dash]: [number, readonly number[]] = [0, []];
  operators.forEach((operator, i) => {
    const given = args[i] as unknown[];
    if (operator === OPS.setLineWidth) width = given[0] as number;
    if (operator === OPS.setDash) dash = given[0] as number[];
    if (operator !== OPS.constructPath || given[0] !== OPS.stroke) return;
    const [data] = given[1] as [Float32Array | null];
    if (data) paths.push({ width, dash, ...drawn(data) });
  });
  return paths;
}

/** Numbers of each step of a path, as pdf.js packs them: move, line, curve, close. */
const TAKES = [2, 2, 6, 4, 0] as const;

function drawn(data: Float32Array): Pick<InkPath, 'lines' | 'points' | 'curved'> {
  const lines: [Point, Point][] = [];
  const points: Point[] = [];
  let at: Point | null = null;
  let curved = false;
  for (let i = 0; i < data.length; ) {
    const step = data[i] ?? 4;
    const count = TAKES[step as 0] ?? 0;
    const to = { x: data[i + count - 1] ?? 0, y: data[i + count] ?? 0 };
    if (count > 0) {
      if (step === 1 && at) lines.push([at, to]);
      if (step > 1) curved = true;
      points.push(to);
      at = to;
    }
    i += count + 1;
  }
  return { lines, points, curved };
}
