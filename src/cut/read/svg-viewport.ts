import { type Affine, compose, scaleBy, shiftBy } from './affine.ts';
import { Refused } from './refused.ts';
import type { Viewport } from './svg-shapes.ts';
import type { SvgElement } from './svg-tree.ts';
import { readNumbers } from './svg-values.ts';

interface ViewBox extends Viewport {
  readonly x: number;
  readonly y: number;
}

/** The part of its own plane that an element shows, or `null` where it does not say. */
export function viewBoxOf({ attributes, name, line }: SvgElement): ViewBox | null {
  const text = attributes.get('viewBox');
  if (text === undefined) return null;
  const numbers = readNumbers(text);
  const [x = 0, y = 0, width = 0, height = 0] = numbers ?? [];
  if (numbers?.length !== 4 || !(width > 0 && height > 0) || !numbers.every(Number.isFinite))
    throw new Refused(`the viewBox of this ${name} is not four numbers, the last two above 0`, line);
  return { x, y, width, height };
}

/** How user units lie in a viewport of a size (SVG 2, 8.2 and 8.6: the equivalent transform). */
export function fitViewBox(element: SvgElement, box: ViewBox, { width, height }: Viewport): Affine {
  const written = element.attributes.get('preserveAspectRatio')?.trim() ?? 'xMidYMid meet';
  const found = /^(none|x(Min|Mid|Max)Y(Min|Mid|Max))(?:\s+(meet|slice))?$/.exec(written);
  if (!found) throw new Refused(`preserveAspectRatio="${written.slice(0, 40)}" cannot be read`, element.line);
  const [across, down] = [width / box.width, height / box.height];
  const one = found[4] === 'slice' ? Math.max(across, down) : Math.min(across, down);
  const [sx, sy] = found[1] === 'none' ? [across, down] : [one, one];
  const share = (word: string | undefined): number => ({ Min: 0, Mid: 0.5, Max: 1 })[word ?? 'Min'] ?? 0;
  const x = share(found[2]) * (width - box.width * sx);
  const y = share(found[3]) * (height - box.height * sy);
  return compose(shiftBy(x, y), compose(scaleBy(sx, sy), shiftBy(-box.x, -box.y)));
}
