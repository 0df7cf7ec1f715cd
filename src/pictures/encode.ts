import sharp, { type Sharp } from 'sharp';
import { contentHash } from '../store/content-hash.ts';
import { PAGE_WIDTHS, PLAIN_WIDTH } from './limits.ts';
import type { PictureFile, PictureSet } from './picture.ts';
import type { Pixels } from './upright.ts';

type Format = 'webp' | 'jpeg' | 'png';

/**
 * Writes pixels in every size that is published: WebP for screens, and one JPEG (PNG where something is
 * see-through) for paper, since a browser puts a JPEG into its print as it is, and a WebP ten times as heavy.
 * They are encoded from bare pixels, so no metadata can come along; without a profile their colours are sRGB by
 * the rules of the web (CSS Color 4).
 */
export async function encodeSet(pixels: Pixels): Promise<PictureSet> {
  const largest = Math.min(pixels.width, Math.max(...PAGE_WIDTHS));
  const plain: Format = pixels.channels === 4 ? 'png' : 'jpeg';
  const widths = [...PAGE_WIDTHS.filter((width) => width < largest), largest];
  const files = await Promise.all([
    ...widths.map((width) => encode(pixels, width, 'webp')),
    encode(pixels, Math.min(largest, PLAIN_WIDTH), plain),
  ]);
  return { files, width: largest, height: heightAt(pixels, largest) };
}

async function encode(pixels: Pixels, width: number, format: Format): Promise<PictureFile> {
  const { data, channels } = pixels;
  const height = heightAt(pixels, width);
  const image = sharp(data, { raw: { width: pixels.width, height: pixels.height, channels } });
  const bytes = await inFormat(image.resize(width, height, { fit: 'fill' }), format).toBuffer();
  return {
    name: `${contentHash(bytes)}.${endings[format]}`,
    bytes,
    width,
    height,
    type: `image/${format}`,
  };
}

const endings: Readonly<Record<Format, string>> = { webp: 'webp', jpeg: 'jpg', png: 'png' };

function inFormat(image: Sharp, format: Format): Sharp {
  switch (format) {
    case 'webp':
      return image.webp({ quality: 80, smartSubsample: true });
    case 'jpeg':
      return image.jpeg({ quality: 80, mozjpeg: true });
    case 'png':
      return image.png({ compressionLevel: 9 });
  }
}

function heightAt(pixels: Pixels, width: number): number {
  return Math.max(1, Math.round((pixels.height * width) / pixels.width));
}
