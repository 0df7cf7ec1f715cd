import { execFileSync } from 'node:child_process';
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A paper with its sizes in millimetres. */
export interface Paper {
  readonly format: 'A4' | 'Letter';
  readonly width: number;
  readonly height: number;
}

/** ISO 216, and ANSI/ASME Y14.1 size A. */
export const papers: readonly Paper[] = [
  { format: 'A4', width: 210, height: 297 },
  { format: 'Letter', width: 215.9, height: 279.4 },
];

/** Of every sheet, in millimetres: left, right and above; below, where the feet stand. */
export const MARGIN = 15;
export const FOOT = 18;

/** The line in the upper margin in which the head of a sheet stands, in millimetres from the upper edge. */
const HEAD = [5, 10] as const;

/** The text of each sheet, as it stands on it. */
export function textOf(file: string): readonly string[] {
  return execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' }).split('\f').slice(0, -1);
}

/** A sheet as poppler paints it, a byte a pixel (0 black). */
export interface Sheet {
  readonly data: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** Paints the sheets of a print up to the last one wanted, all in one run of pdftoppm. */
export async function paint(file: string, dpi: number, last: number): Promise<readonly Sheet[]> {
  const into = await mkdtemp(join(tmpdir(), 'baybook sheets '));
  execFileSync('pdftoppm', ['-r', String(dpi), '-gray', '-l', String(last), file, join(into, 'sheet')]);
  const names = (await readdir(into)).sort();
  const painted = await Promise.all(names.map(async (name) => grey(await readFile(join(into, name)))));
  await rm(into, { recursive: true });
  return painted;
}

/** Reads a portable grey map (netpbm, binary). */
function grey(bytes: Buffer): Sheet {
  const header = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString('latin1'));
  if (!header) throw new Error('pdftoppm wrote no grey picture');
  return { data: bytes.subarray(header[0].length), width: Number(header[1]), height: Number(header[2]) };
}

/** How many dark pixels lie in the text of a sheet, and where one lies in its margins. */
export function inkOf(
  { data, width, height }: Sheet,
  paper: Paper,
): { readonly inside: number; readonly outside: string | null } {
  const perMm = width / paper.width;
  const edge = MARGIN - 0.7;
  const [left, right] = [Math.floor(edge * perMm), Math.ceil((paper.width - edge) * perMm)];
  const [top, foot] = [Math.floor(edge * perMm), Math.floor((paper.height - FOOT) * perMm)];
  const [headTop, headFoot] = [Math.floor(HEAD[0] * perMm), Math.ceil(HEAD[1] * perMm)];
  let inside = 0;
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      if ((data[y * width + x] ?? 255) > 200) continue;
      const above = y < top && (y < headTop || y > headFoot);
      if (x < left || x > right || above) return { inside, outside: `${x}, ${y}` };
      // The head stands above the text, the feet below.
      if (y >= top && y < foot) inside += 1;
    }
  }
  return { inside, outside: null };
}

/** The line at the head of a sheet, by which it is known when it lies alone; `rest` is what the sheet says below it. */
export function headOf(text: string): { readonly head: string; readonly rest: string } {
  const [head = '', ...rest] = text.trimStart().split('\n');
  return { head: head.trim().replace(/\s+/g, ' '), rest: rest.join('\n').trimStart() };
}

/** What stands in the foot of each sheet between two shares of its width. */
export function feetOf(file: string, paper: Paper, from: number, to: number): readonly string[] {
  const points = (millimetres: number) => String(Math.round((millimetres / 25.4) * 72));
  const area = ['-x', points(from * paper.width), '-W', points((to - from) * paper.width)];
  const strip = ['-y', points(paper.height - FOOT + 0.5), '-H', points(FOOT - 0.5)];
  const text = execFileSync('pdftotext', [...area, ...strip, '-layout', file, '-'], { encoding: 'utf8' });
  return text
    .split('\f')
    .slice(0, -1)
    .map((sheet) => sheet.trim().replace(/\s+/g, ' '));
}

/** A raster picture as it stands in a print. */
export interface PrintedImage {
  readonly encoding: string;
  /** Pixels: `800×600`. */
  readonly size: string;
  /** Dots per inch of the sheet. */
  readonly across: number;
  readonly up: number;
}

/** The raster pictures of a print, as pdfimages (poppler) lists them. */
export function imagesOf(file: string): readonly PrintedImage[] {
  const lines = execFileSync('pdfimages', ['-list', file], { encoding: 'utf8' }).trim().split('\n').slice(2);
  return lines.map((line) => {
    const columns = line.trim().split(/\s+/);
    return {
      encoding: columns[8] ?? '',
      size: `${columns[3]}×${columns[4]}`,
      across: Number(columns[12]),
      up: Number(columns[13]),
    };
  });
}
