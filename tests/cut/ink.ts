import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const DPI = 600;

/** A page as poppler paints it at 600 dpi; places in millimetres from its lower left corner. */
export interface Ink {
  readonly width: number;
  readonly height: number;
  /** Middles of the dark runs on the level line at `y`, from `x1` to `x2`. */
  readonly across: (y: number, x1: number, x2: number) => number[];
  /** Middles of the dark runs on the upright line at `x`, from `y1` to `y2`. */
  readonly up: (x: number, y1: number, y2: number) => number[];
  /** The smallest rectangle around all ink. */
  readonly box: () => { minX: number; minY: number; maxX: number; maxY: number };
}

/** Paints one page of a PDF with pdftoppm, which was written by others. */
export function paint(pdf: Uint8Array, page: number): Ink {
  const folder = mkdtempSync(join(tmpdir(), 'sheet-'));
  try {
    writeFileSync(join(folder, 'in.pdf'), pdf);
    const args = [
      '-r',
      String(DPI),
      '-gray',
      '-f',
      String(page),
      '-l',
      String(page),
      '-singlefile',
      'in.pdf',
      'out',
    ];
    execFileSync('pdftoppm', args, { cwd: folder });
    return inkOf(readFileSync(join(folder, 'out.pgm')));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** What poppler or qpdf says about a PDF. */
export function ask(tool: 'pdfinfo' | 'qpdf', pdf: Uint8Array, ...args: string[]): string {
  const folder = mkdtempSync(join(tmpdir(), 'sheet-'));
  try {
    writeFileSync(join(folder, 'in.pdf'), pdf);
    return execFileSync(tool, [...args, 'in.pdf'], { cwd: folder, encoding: 'utf8' });
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function inkOf(pgm: Buffer): Ink {
  const header = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.subarray(0, 40).toString('latin1'));
  if (!header) throw new Error('pdftoppm wrote no grey picture');
  const [columns, rows] = [Number(header[1]), Number(header[2])];
  const start = header[0].length;
  const perMm = DPI / 25.4;
  const height = rows / perMm;
  const dark = (c: number, r: number): boolean => (pgm[start + r * columns + c] ?? 255) < 128;
  const runs = (from: number, to: number, isDark: (i: number) => boolean): number[] => {
    const found: number[] = [];
    let begin = -1;
    for (let i = from; i <= to; i++) {
      const now = i < to && isDark(i);
      if (now && begin < 0) begin = i;
      if (!now && begin >= 0) {
        found.push((begin + i) / 2 / perMm);
        begin = -1;
      }
    }
    return found;
  };
  const row = (y: number): number => Math.floor((height - y) * perMm);
  return {
    width: columns / perMm,
    height,
    across: (y, x1, x2) => runs(Math.floor(x1 * perMm), Math.ceil(x2 * perMm), (c) => dark(c, row(y))),
    up: (x, y1, y2) =>
      runs(row(y2), row(y1), (r) => dark(Math.floor(x * perMm), r))
        .map((down) => height - down)
        .toReversed(),
    box: () => {
      let [minX, minY, maxX, maxY] = [columns, rows, 0, 0];
      for (let r = 0; r < rows; r++) {
        for (let c = 0; c < columns; c++) {
          if (!dark(c, r)) continue;
          minX = Math.min(minX, c);
          maxX = Math.max(maxX, c + 1);
          minY = Math.min(minY, r);
          maxY = Math.max(maxY, r + 1);
        }
      }
      return {
        minX: minX / perMm,
        maxX: maxX / perMm,
        minY: height - maxY / perMm,
        maxY: height - minY / perMm,
      };
    },
  };
}
