import sharp from 'sharp';
import type { PictureBox } from '../model/block.ts';
import { MAX_HEIGHT, MAX_PIXELS, MAX_SECONDS, PAGE_WIDTHS } from './limits.ts';

/** Pixels in memory: 8-bit sRGB, three channels, or four where something is see-through. */
export interface Pixels {
  readonly data: Buffer;
  readonly width: number;
  readonly height: number;
  readonly channels: 3 | 4;
}

/** A part of a picture in whole pixels. */
interface PixelBox {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

const WHOLE: PictureBox = { left: 0, top: 0, width: 1, height: 1 };

/**
 * Turns a picture upright after its EXIF orientation (mirrored ones too), cuts out a part, converts its colours
 * to sRGB by its own profile, and sizes it to the largest that will be published. What is blurred is averaged
 * away here, before anything is encoded. Throws where the picture cannot be decoded.
 */
export async function uprightPixels(
  bytes: Uint8Array,
  crop: PictureBox | null,
  blur: readonly PictureBox[],
): Promise<Pixels> {
  const { autoOrient } = await sharp(bytes, { limitInputPixels: MAX_PIXELS }).metadata();
  const window = pixelBox(crop ?? WHOLE, autoOrient.width, autoOrient.height);
  const scale = Math.min(1, Math.max(...PAGE_WIDTHS) / window.width, MAX_HEIGHT / window.height);
  const width = Math.max(1, Math.round(window.width * scale));
  const height = Math.max(1, Math.round(window.height * scale));
  let pipeline = sharp(bytes, { limitInputPixels: MAX_PIXELS, failOn: 'error' }).autoOrient();
  if (crop) pipeline = pipeline.extract(window);
  const { data, info } = await pipeline
    .resize(width, height, { fit: 'fill' })
    .toColourspace('srgb')
    .timeout({ seconds: MAX_SECONDS })
    .raw({ depth: 'uchar' })
    .toBuffer({ resolveWithObject: true });
  if (info.channels !== 3 && info.channels !== 4) throw new Error(`${info.channels} channels after sRGB`);
  const pixels: Pixels = { data, width, height, channels: info.channels };
  // Whole pixels were cut, so the areas are measured on what was cut, not on what was asked for.
  const cut: PictureBox = {
    left: window.left / autoOrient.width,
    top: window.top / autoOrient.height,
    width: window.width / autoOrient.width,
    height: window.height / autoOrient.height,
  };
  for (const box of blur) await blurBox(pixels, within(box, cut));
  return pixels;
}

/** A box of the whole picture as fractions of a part of it; `null` where they do not meet. */
function within(box: PictureBox, part: PictureBox): PictureBox | null {
  const left = Math.max(0, (box.left - part.left) / part.width);
  const top = Math.max(0, (box.top - part.top) / part.height);
  const right = Math.min(1, (box.left + box.width - part.left) / part.width);
  const bottom = Math.min(1, (box.top + box.height - part.top) / part.height);
  return right > left && bottom > top ? { left, top, width: right - left, height: bottom - top } : null;
}

/** Every pixel that a box touches, at least one, never outside the picture. */
function pixelBox(box: PictureBox, width: number, height: number): PixelBox {
  const left = Math.min(Math.max(0, Math.floor(box.left * width)), width - 1);
  const top = Math.min(Math.max(0, Math.floor(box.top * height)), height - 1);
  const right = Math.min(Math.max(left + 1, Math.ceil((box.left + box.width) * width)), width);
  const bottom = Math.min(Math.max(top + 1, Math.ceil((box.top + box.height) * height)), height);
  return { left, top, width: right - left, height: bottom - top };
}

/**
 * Replaces an area by at most {@link BLUR_CELLS} averages along its longer side. A soft blur of letters can be
 * undone; an average of a whole letter cannot.
 */
const BLUR_CELLS = 6;

async function blurBox(pixels: Pixels, box: PictureBox | null): Promise<void> {
  if (!box) return;
  const { width, height, channels, data } = pixels;
  const area = pixelBox(box, width, height);
  const cell = Math.max(area.width, area.height) / BLUR_CELLS;
  const columns = Math.max(1, Math.round(area.width / cell));
  const rows = Math.max(1, Math.round(area.height / cell));
  const averages = await sharp(data, { raw: { width, height, channels } })
    .extract(area)
    .resize(columns, rows, { fit: 'fill', kernel: 'linear' })
    .raw()
    .toBuffer();
  const patch = await sharp(averages, { raw: { width: columns, height: rows, channels } })
    .resize(area.width, area.height, { fit: 'fill', kernel: 'cubic' })
    .raw()
    .toBuffer();
  for (let row = 0; row < area.height; row += 1) {
    const from = row * area.width * channels;
    patch.copy(data, ((area.top + row) * width + area.left) * channels, from, from + area.width * channels);
  }
}
