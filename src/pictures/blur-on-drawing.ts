import type { PictureProblem } from './picture.ts';

/** Tells of a blur that is asked of a drawing, which can only be redrawn. */
export function blurOnDrawing(file: string): PictureProblem {
  return {
    code: 'drawing-blurred',
    message: `${file} is a drawing and cannot be blurred; take out of it what must not be seen`,
  };
}
