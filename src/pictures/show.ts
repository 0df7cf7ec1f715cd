import sharp from 'sharp';
import { MAX_PIXELS, PAGE_WIDTHS } from './limits.ts';

/** A picture upright, and small enough for a browser, as WebP; for showing to its author alone. */
export async function shownUpright(bytes: Uint8Array): Promise<Uint8Array> {
  return await sharp(bytes, { limitInputPixels: MAX_PIXELS })
    .autoOrient()
    .resize({ width: Math.max(...PAGE_WIDTHS), withoutEnlargement: true })
    .webp()
    .toBuffer();
}

/**
 * A photograph turned by a quarter to the right, in the format that it has. What it says of its place and its camera
 * is left out.
 */
export async function turnedRight(bytes: Uint8Array): Promise<Uint8Array> {
  // Upright first: what the camera notes of its own position would turn it once more.
  const upright = await sharp(bytes, { limitInputPixels: MAX_PIXELS }).autoOrient().toBuffer();
  return await sharp(upright, { limitInputPixels: MAX_PIXELS }).rotate(90).jpeg({ quality: 94 }).toBuffer();
}
