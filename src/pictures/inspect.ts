import sharp, { type Metadata } from 'sharp';
import { decodeSource } from '../source/source-file.ts';
import { contentHash } from '../store/content-hash.ts';
import { noStore, readJson, type Store, writeJson } from '../store/store.ts';
import { type PictureKind, pictureKind } from './kind.ts';
import { MAX_PICTURE_BYTES, MAX_PIXELS, MAX_SECONDS } from './limits.ts';
import type { Outcome, PictureCode, PictureInfo } from './picture.ts';
import { RECIPE } from './recipe.ts';
import { cleanSvg } from './svg/clean-svg.ts';

/**
 * Looks at a picture without deriving anything: what it is, its upright size, or every reason why it cannot
 * be shown. Decodes it once at a small size, so that a file that breaks off is found here.
 *
 * @param file path from the workspace's root, for the messages
 */
export async function inspectPicture(
  bytes: Uint8Array,
  file: string,
  store: Store = noStore,
): Promise<Outcome<PictureInfo>> {
  if (bytes.length > MAX_PICTURE_BYTES) return tooManyBytes(bytes.length, file);
  const name = `inspect-${contentHash(RECIPE, file, bytes)}.json`;
  const kept = readJson<Outcome<PictureInfo>>(store, name);
  if (kept) return kept;
  const kind = pictureKind(bytes);
  const outcome = kind === 'svg' ? inspectDrawing(bytes, file) : await inspectRaster(bytes, kind, file);
  writeJson(store, name, outcome);
  return outcome;
}

function inspectDrawing(bytes: Uint8Array, file: string): Outcome<PictureInfo> {
  const source = decodeSource(file, bytes);
  if (!source) return fault('drawing-unreadable', `${file} is not UTF-8 text; save the drawing as UTF-8`);
  const cleaned = cleanSvg(source.text, { file, prefix: '' });
  if (!cleaned.ok) return cleaned;
  const { width, height } = cleaned.value;
  return { ok: true, value: { kind: 'svg', width, height } };
}

async function inspectRaster(
  bytes: Uint8Array,
  kind: PictureKind,
  file: string,
): Promise<Outcome<PictureInfo>> {
  const reason = notARaster(kind);
  if (reason) return fault('picture-unreadable', `${file} ${reason}`);
  if (kind === 'apng') return animated(file);
  try {
    // The header alone is read here, whatever size it claims.
    const metadata = await sharp(bytes, { limitInputPixels: false }).metadata();
    const { width, height } = metadata.autoOrient;
    if (width * height > MAX_PIXELS) return tooManyPixels(metadata, file);
    if ((metadata.pages ?? 1) > 1) return animated(file);
    await sharp(bytes, { limitInputPixels: MAX_PIXELS, failOn: 'error' })
      .resize(64, 64, { fit: 'inside' })
      .timeout({ seconds: MAX_SECONDS })
      .raw()
      .toBuffer();
    return { ok: true, value: { kind: 'raster', width, height } };
  } catch {
    return fault(
      'picture-unreadable',
      `${file} is damaged or breaks off before its end; copy it again from the camera`,
    );
  }
}

function notARaster(kind: PictureKind): string | null {
  switch (kind) {
    case 'empty':
      return 'is empty (zero bytes); copy it again from the camera';
    case 'unknown':
      return 'is not a picture, whatever its name says; expected JPEG, PNG, WebP, AVIF, TIFF, GIF or SVG';
    case 'heic':
      return 'is a HEIC photo, which browsers do not show; export it as JPEG';
    case 'svgz':
      return 'is compressed; save the drawing as plain SVG';
    default:
      return null;
  }
}

function animated(file: string): Outcome<never> {
  return fault(
    'picture-animated',
    `${file} moves or has several pages; a print shows only one picture, so save the one that counts`,
  );
}

function tooManyPixels(metadata: Metadata, file: string): Outcome<never> {
  const { width, height } = metadata.autoOrient;
  const limit = MAX_PIXELS / 1_000_000;
  return fault(
    'picture-too-large',
    `${file} is ${width} × ${height} pixels; at most ${limit} million pixels are read, so scale it down`,
  );
}

function tooManyBytes(length: number, file: string): Outcome<never> {
  const size = Math.ceil(length / 1024 / 1024);
  const limit = MAX_PICTURE_BYTES / 1024 / 1024;
  return fault('picture-too-large', `${file} is ${size} MB; at most ${limit} MB are read, so scale it down`);
}

function fault(code: PictureCode, message: string): Outcome<never> {
  return { ok: false, problems: [{ code, message }] };
}
