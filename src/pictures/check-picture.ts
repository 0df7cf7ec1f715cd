import type { Element } from 'hast';
import { decodeSource } from '../source/source-file.ts';
import type { Store } from '../store/store.ts';
import { blurOnDrawing } from './blur-on-drawing.ts';
import { type PictureWeight, pictureOverBudget } from './budget.ts';
import { derivePictures } from './derive.ts';
import { inspectPicture } from './inspect.ts';
import type { PictureProblem, PictureRequest } from './picture.ts';
import { cleanSvg } from './svg/clean-svg.ts';

/** Everything wrong with a picture as it is asked for, and what it will weigh; `null` where it cannot be shown. */
export interface PictureCheck {
  readonly problems: readonly PictureProblem[];
  readonly weight: PictureWeight | null;
}

/**
 * Judges a picture with what is asked to be done to it. A photo is derived, since only that tells what it will
 * weigh; with a store the build then finds the work done.
 *
 * @param file path from the workspace's root, for the messages
 */
export async function checkPicture(
  bytes: Uint8Array,
  file: string,
  request: PictureRequest,
  store: Store,
): Promise<PictureCheck> {
  const seen = await inspectPicture(bytes, file, store);
  if (!seen.ok) return { problems: seen.problems, weight: null };
  if (seen.value.kind === 'svg') return checkDrawing(bytes, file, request);
  const derived = await derivePictures(bytes, file, request, store);
  if (!derived.ok) return { problems: derived.problems, weight: null };
  const sets = [derived.value, ...(derived.value.detail ? [derived.value.detail] : [])];
  const heaviest = sets.map(({ files }) =>
    Math.max(...files.filter(isForScreens).map((one) => one.bytes.length)),
  );
  return weighed({ file, kind: 'raster', bytes: heaviest.reduce((sum, one) => sum + one, 0) }, []);
}

function isForScreens({ type }: { readonly type: string }): boolean {
  return type === 'image/webp';
}

function checkDrawing(bytes: Uint8Array, file: string, request: PictureRequest): PictureCheck {
  const cleaned = cleanSvg(decodeSource(file, bytes)?.text ?? '', { file, prefix: '' });
  if (!cleaned.ok) return { problems: cleaned.problems, weight: null };
  const problems = request.blur.length > 0 ? [blurOnDrawing(file)] : [];
  return weighed({ file, kind: 'svg', bytes: markupSize(cleaned.value.element) }, problems);
}

function weighed(weight: PictureWeight, problems: readonly PictureProblem[]): PictureCheck {
  const heavy = pictureOverBudget(weight);
  return { problems: heavy ? [...problems, heavy] : problems, weight };
}

/** About how many characters a tree is when written: tags, attributes with their quotes, and text. */
function markupSize(element: Element): number {
  const attributes = Object.entries(element.properties).reduce(
    (sum, [name, value]) => sum + name.length + String(value).length + 4,
    0,
  );
  const content = element.children.reduce((sum, child) => {
    if (child.type === 'element') return sum + markupSize(child);
    return sum + (child.type === 'text' ? child.value.length : 0);
  }, 0);
  return element.tagName.length * 2 + 5 + attributes + content;
}
