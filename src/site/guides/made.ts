import type { PictureView } from '../../pages/steps/block-views.ts';
import { sha256 } from '../../store/content-hash.ts';
import { type Store, writeContent } from '../../store/store.ts';
import type { PageLinks } from './link-check.ts';

/** A file of the site that has been made, as plain data. */
export interface MadeFile {
  /** From the site's root. */
  readonly path: string;
  /** SHA-256 in hexadecimal. */
  readonly hash: string;
  /** Its bytes, where the store does not keep them. */
  readonly bytes?: Uint8Array;
}

/** A file of the site with its bytes counted. */
export interface SizedFile {
  readonly path: string;
  readonly size: number;
}

/** A file of the workspace that is published: as it is, or as a picture. */
export interface LinkedFile {
  /** From the workspace's root. */
  readonly path: string;
  /** SHA-256 in hexadecimal, as it was when it was checked. */
  readonly hash: string;
}

/** What a guide gives to the site besides its summary, as plain data. */
export interface MadeGuide {
  readonly files: readonly MadeFile[];
  readonly linked: readonly LinkedFile[];
  /** The pictures that its pages show. */
  readonly shown: readonly LinkedFile[];
  readonly pages: readonly PageLinks[];
  /** Files of the workspace whose pages it links to. */
  readonly asksFor: readonly string[];
  /** The guide as one file. */
  readonly alone: SizedFile;
  /** Its photographs, drawings and templates. */
  readonly heavy: readonly SizedFile[];
  /** The picture by which lists show the guide, addressed from the site's root; `null` where it has none of its own. */
  readonly face: PictureView | null;
  /** What a layout could not print, one sentence each. */
  readonly problems: readonly string[];
}

/** Whether a file of it has to be handed on, since the store does not keep it. */
export function bringsBytes(made: MadeGuide | null): boolean {
  return made?.files.some(({ bytes }) => bytes) ?? false;
}

/** Hands a finished file to the store; where that fails, its bytes go along. */
export function keepFile(store: Store, path: string, content: string | Uint8Array): MadeFile {
  const bytes = typeof content === 'string' ? Buffer.from(content) : content;
  const hash = sha256(bytes);
  return writeContent(store, hash, bytes) ? { path, hash } : { path, hash, bytes };
}
