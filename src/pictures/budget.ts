import { DRAWING_BUDGET, PAGE_BUDGET, PICTURE_BUDGET } from './limits.ts';
import type { PictureProblem } from './picture.ts';

/** What one picture costs the reader of a page. */
export interface PictureWeight {
  /** Path from the workspace's root. */
  readonly file: string;
  readonly kind: 'raster' | 'svg';
  /** Bytes of its largest screen size, or of the cleaned drawing. */
  readonly bytes: number;
}

/** Tells of a picture that is heavier than a tablet in the bay should have to load. */
export function pictureOverBudget({ file, kind, bytes }: PictureWeight): PictureProblem | null {
  const budget = kind === 'svg' ? DRAWING_BUDGET : PICTURE_BUDGET;
  if (bytes <= budget) return null;
  const mend = kind === 'svg' ? 'simplify its paths' : 'crop it to what the step shows';
  return {
    code: 'picture-over-budget',
    message: `${file} is ${kilobytes(bytes)} on the page, over the ${kilobytes(budget)} for one picture; ${mend}`,
  };
}

/** Tells of a page whose pictures together are too heavy, naming the three heaviest. Each file counts once. */
export function pageOverBudget(pictures: readonly PictureWeight[]): PictureProblem | null {
  const once = [...new Map(pictures.map((picture) => [picture.file, picture])).values()];
  const total = once.reduce((sum, { bytes }) => sum + bytes, 0);
  if (total <= PAGE_BUDGET) return null;
  const heaviest = once
    .toSorted((a, b) => b.bytes - a.bytes || (a.file < b.file ? -1 : 1))
    .slice(0, 3)
    .map(({ file, bytes }) => `${file} (${kilobytes(bytes)})`);
  return {
    code: 'page-pictures-over-budget',
    message: `the pictures of this page are ${kilobytes(total)}, over its ${kilobytes(PAGE_BUDGET)}; the heaviest are ${heaviest.join(', ')}`,
  };
}

function kilobytes(bytes: number): string {
  return `${Math.ceil(bytes / 1000)} kB`;
}
