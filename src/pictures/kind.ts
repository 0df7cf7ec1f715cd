/** What a file really is, told from its first bytes; the ending of its name is never believed. */
export type PictureKind =
  | 'jpeg'
  | 'png'
  | 'apng'
  | 'webp'
  | 'gif'
  | 'tiff'
  | 'avif'
  | 'heic'
  | 'svg'
  | 'svgz'
  | 'empty'
  | 'unknown';

/** Tells the kind of a picture by the signatures of its format (registered media types, and W3C PNG for `acTL`). */
export function pictureKind(bytes: Uint8Array): PictureKind {
  if (bytes.length === 0) return 'empty';
  const head = latin1(bytes, 0, 16);
  if (head.startsWith('\xff\xd8\xff')) return 'jpeg';
  if (head.startsWith('\x89PNG\r\n\x1a\n')) return isAnimatedPng(bytes) ? 'apng' : 'png';
  if (head.startsWith('RIFF') && head.slice(8, 12) === 'WEBP') return 'webp';
  if (head.startsWith('GIF87a') || head.startsWith('GIF89a')) return 'gif';
  if (head.startsWith('II*\0') || head.startsWith('MM\0*')) return 'tiff';
  if (head.slice(4, 8) === 'ftyp') return isoBrand(bytes);
  if (head.startsWith('\x1f\x8b')) return 'svgz';
  return /<svg[\s>/:]|<\w+:svg[\s>]/.test(latin1(bytes, 0, 65_536)) ? 'svg' : 'unknown';
}

/** Whether the decoder may be handed a picture of this kind; drawings never are. */
export function isRaster(kind: PictureKind): boolean {
  return ['jpeg', 'png', 'webp', 'gif', 'tiff', 'avif'].includes(kind);
}

function latin1(bytes: Uint8Array, start: number, end: number): string {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1', start, end);
}

/** An animated PNG announces itself with an `acTL` chunk before the first `IDAT`. */
function isAnimatedPng(bytes: Uint8Array): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = 8;
  while (at + 8 <= bytes.length) {
    const name = latin1(bytes, at + 4, at + 8);
    if (name === 'acTL') return true;
    if (name === 'IDAT') return false;
    at += 12 + view.getUint32(at);
  }
  return false;
}

/** AVIF and a phone's HEIC share a container; the brands in its first box tell them apart. */
function isoBrand(bytes: Uint8Array): PictureKind {
  const length = Math.min(new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(0), 256);
  const brands = latin1(bytes, 8, length);
  if (/avif|avis/.test(brands)) return 'avif';
  return /heic|heix|hevc|heim|heis|mif1|msf1/.test(brands) ? 'heic' : 'unknown';
}
