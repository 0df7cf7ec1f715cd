import type { PictureBox } from '../model/block.ts';

/** What a picture is once it has been looked at; sizes are those of the upright picture. */
export type PictureInfo =
  | { readonly kind: 'raster'; readonly width: number; readonly height: number }
  | { readonly kind: 'svg'; readonly width: number; readonly height: number };

/** The names of the rules about pictures; each has its card in `rules.ts`. */
export type PictureCode =
  | 'picture-unreadable'
  | 'picture-too-large'
  | 'picture-animated'
  | 'picture-over-budget'
  | 'page-pictures-over-budget'
  | 'drawing-unreadable'
  | 'drawing-too-complex'
  | 'drawing-unsafe'
  | 'drawing-reaches-outside'
  | 'drawing-part-unsupported'
  | 'drawing-blurred';

/** What is wrong with a picture, before it is known where the author names it. Plain data, so that it can be cached. */
export interface PictureProblem {
  readonly code: PictureCode;
  /** Names the file, says what was found and what to do; no closing full stop. */
  readonly message: string;
}

/** What the author asks to be done to a picture; boxes are fractions of the upright, uncropped picture. */
export interface PictureRequest {
  /** The part that is shown; `null` shows all. */
  readonly crop: PictureBox | null;
  /** Areas made unrecognisable, such as number plates and faces. */
  readonly blur: readonly PictureBox[];
  /** A part that is shown enlarged as a picture of its own, besides the main one. */
  readonly zoom: PictureBox | null;
}

/** One file that a picture is published as. */
export interface PictureFile {
  /** Hash of its bytes and an ending: `3f2a9c….webp`. */
  readonly name: string;
  readonly bytes: Uint8Array;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
  readonly type: 'image/webp' | 'image/jpeg' | 'image/png';
}

/** One view of a picture in all its sizes: for screens WebP, narrowest first; last the plain one for paper. */
export interface PictureSet {
  readonly files: readonly PictureFile[];
  /** Pixels of the largest size; they give the page its width and height, so that nothing jumps. */
  readonly width: number;
  readonly height: number;
}

/** A derived picture: the main view, and the enlarged one where it was asked for. */
export interface DerivedPicture extends PictureSet {
  readonly detail: PictureSet | null;
}

/** A result, or what stands in its way. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly PictureProblem[] };
