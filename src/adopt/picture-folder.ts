import { idLike } from '../directives/attributes/id-text.ts';
import { pictureKind } from '../pictures/kind.ts';
import { MAX_PICTURE_BYTES } from '../pictures/limits.ts';
import type { OldPicture } from './read/old-guide.ts';

/** The kinds of picture that a page can show, with the endings of their names. */
const endings: { readonly [kind: string]: string } = {
  jpeg: 'jpg',
  png: 'png',
  webp: 'webp',
  gif: 'gif',
  tiff: 'tiff',
  avif: 'avif',
  svg: 'svg',
};

/** The pictures that go beside a draft, under clean names; one that is shown twice lies there once. */
export class PictureFolder {
  readonly files = new Map<string, Uint8Array>();

  /** The path of a picture from the guide's folder, or why it cannot be shown. */
  take(picture: OldPicture): { readonly path: string } | { readonly why: string } {
    if (picture.bytes === null) return { why: picture.why };
    const { bytes } = picture;
    const kind = pictureKind(bytes);
    const ending = endings[kind];
    if (ending === undefined) return { why: `a picture in a form that no page shows (${kind})` };
    if (bytes.length > MAX_PICTURE_BYTES) return { why: 'a picture that is too large' };
    const same = [...this.files].find(([, known]) => Buffer.compare(known, bytes) === 0);
    if (same) return { path: same[0] };
    const likely = idLike(picture.name)?.slice(0, 40).replace(/-$/, '') ?? 'picture';
    let path = `pictures/${likely}.${ending}`;
    for (let next = 2; this.files.has(path); next += 1) path = `pictures/${likely}-${next}.${ending}`;
    this.files.set(path, bytes);
    return { path };
  }
}
