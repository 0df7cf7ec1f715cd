import type { Element } from 'hast';
import sharp, { type Sharp } from 'sharp';
import { stringify } from '../html/stringify.ts';
import { decodeSource } from '../source/source-file.ts';
import { contentHash } from '../store/content-hash.ts';
import { readJson, type Store, writeJson } from '../store/store.ts';
import { isRaster, pictureKind } from './kind.ts';
import { MAX_PIXELS, MAX_SECONDS } from './limits.ts';
import { RECIPE } from './recipe.ts';
import { cleanSvg } from './svg/clean-svg.ts';

/** A place on the upright, uncropped picture, as fractions (0 to 1) from its upper left. */
interface Place {
  readonly x: number;
  readonly y: number;
}

/** Pictures are looked at in this width, in pixels; a photograph that is narrower shows too little to be judged. */
const WIDTH = 480;

/** How far from the point of a mark something must be seen, as parts of the width: the dot's own size on a drawing, a thumb's on a photograph. */
const NEAR_ON_DRAWING = 0.012;
const NEAR_ON_PHOTOGRAPH = 0.03;

/** The least difference between light and dark near a mark, of 255: paper, sky and a plain panel have less. */
const CONTRAST = 10;

/** Less than this is not ink, of 255. */
const FAINT = 8;

/**
 * Tells for each place whether a mark there would point at nothing: on a drawing nothing is drawn near it, on a
 * photograph there is no contrast. A picture that cannot be read has no blank places; another rule tells of it.
 */
export async function blankPlaces(
  bytes: Uint8Array,
  places: readonly Place[],
  store: Store,
): Promise<readonly boolean[]> {
  const name = `blank-${contentHash(RECIPE, JSON.stringify(places), bytes)}.json`;
  const kept = readJson<readonly boolean[]>(store, name);
  if (kept) return kept;
  const kind = pictureKind(bytes);
  const seen = await (kind === 'svg' ? inkOf(bytes) : isRaster(kind) ? lightOf(bytes) : null);
  const blank = places.map((place) => seen !== null && isBlankNear(place, seen));
  writeJson(store, name, blank);
  return blank;
}

/** One value a pixel, how far around a place they are looked at, and what spread of them makes something to be seen. */
interface Seen {
  readonly data: Buffer;
  readonly width: number;
  readonly height: number;
  readonly near: number;
  readonly isNothing: (least: number, most: number) => boolean;
}

function isBlankNear({ x, y }: Place, { data, width, height, near, isNothing }: Seen): boolean {
  const radius = near * width;
  const [middle, line] = [x * width, y * height];
  let [least, most] = [255, 0];
  for (let row = Math.ceil(line - radius); row <= line + radius; row += 1) {
    for (let column = Math.ceil(middle - radius); column <= middle + radius; column += 1) {
      const inside = row >= 0 && row < height && column >= 0 && column < width;
      if (!inside || Math.hypot(column - middle, row - line) > radius) continue;
      const value = data[row * width + column] ?? 0;
      least = Math.min(least, value);
      most = Math.max(most, value);
    }
  }
  return least <= most && isNothing(least, most);
}

/** Where a drawing has anything on its ground, a white face too. */
async function inkOf(bytes: Uint8Array): Promise<Seen | null> {
  const source = decodeSource('', bytes);
  const cleaned = source && cleanSvg(source.text, { file: '', prefix: '' });
  if (!cleaned?.ok) return null;
  const { element, width, height } = cleaned.value;
  const scale = WIDTH / width;
  const root: Element = {
    ...element,
    properties: {
      ...element.properties,
      xmlns: 'http://www.w3.org/2000/svg',
      width: WIDTH,
      height: Math.max(1, Math.round(height * scale)),
    },
    children: element.children.filter((child) => child.type !== 'element' || !isGround(child, element)),
  };
  const image = sharp(Buffer.from(stringify([root]).html), { limitInputPixels: MAX_PIXELS }).ensureAlpha();
  const seen = await pixels(image.extractChannel('alpha'));
  return seen && { ...seen, near: NEAR_ON_DRAWING, isNothing: (_, most) => most < FAINT };
}

/** A sheet of paper under all of the drawing. */
function isGround({ tagName, properties }: Element, { properties: { viewBox } }: Element): boolean {
  if (tagName !== 'rect' || properties.transform !== undefined) return false;
  const [left = 0, top = 0, width = 0, height = 0] = String(viewBox).split(' ').map(Number);
  const size = (name: string, whole: number) => {
    const value = String(properties[name] ?? '0');
    return value.endsWith('%') ? (Number.parseFloat(value) / 100) * whole : Number(value);
  };
  const [x, y] = [size('x', width), size('y', height)];
  return (
    x <= left &&
    y <= top &&
    x + size('width', width) >= left + width &&
    y + size('height', height) >= top + height
  );
}

async function lightOf(bytes: Uint8Array): Promise<Seen | null> {
  const options = { limitInputPixels: MAX_PIXELS };
  const metadata = await sharp(bytes, options)
    .metadata()
    .catch(() => null);
  if (!metadata || metadata.autoOrient.width < WIDTH) return null;
  const image = sharp(bytes, options).autoOrient().flatten({ background: '#fff' }).resize({ width: WIDTH });
  const seen = await pixels(image.greyscale());
  return seen && { ...seen, near: NEAR_ON_PHOTOGRAPH, isNothing: (least, most) => most - least < CONTRAST };
}

async function pixels(image: Sharp): Promise<Pick<Seen, 'data' | 'width' | 'height'> | null> {
  const made = image.timeout({ seconds: MAX_SECONDS }).raw({ depth: 'uchar' });
  const { data, info } = await made
    .toBuffer({ resolveWithObject: true })
    .catch(() => ({ data: null, info: null }));
  return data && info.channels === 1 ? { data, width: info.width, height: info.height } : null;
}
