import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { contentHash, sha256 } from '../../store/content-hash.ts';
import { listedIn, workerPath } from '../device/worker.ts';

/** Lists what Baybook has written into the folder, so that it never touches anything else. */
export const listName = '.baybook-files.json';

/** The files that earlier builds have written, and what to know of how they are known, one sentence each. */
interface OwnFiles {
  readonly files: ReadonlySet<string>;
  readonly notices: readonly string[];
}

/** The list as it is written. */
interface OwnList {
  readonly files: readonly string[];
  /** A hash of the files, by which a list is known that somebody has edited: what it names could be anybody's. */
  readonly seal: string;
}

/**
 * The files that earlier builds have written. Where the list is gone, or is not as Baybook wrote it, they are those
 * that the site's own worker names and that are still as it says.
 */
export function readOwnFiles(folder: string): OwnFiles {
  const text = readText(join(folder, listName));
  const listed = text === null ? null : sealedIn(text);
  if (listed) return { files: new Set(listed.filter(isPathWithin)), notices: [] };
  const named = listedIn(readText(join(folder, workerPath)) ?? '');
  const still = Object.entries(named).filter(
    ([path, hash]) => isPathWithin(path) && hashAt(join(folder, path)) === hash,
  );
  return {
    files: new Set([...still.map(([path]) => path), ...(still.length > 0 ? [workerPath] : [])]),
    notices: text === null ? [] : [editedWords],
  };
}

const editedWords = `${listName} in the output folder is not as Baybook wrote it; only what worker.js there names, and is unchanged, counts as written by Baybook`;

/** The list of these files as it is written. */
export function ownFilesList(files: Iterable<string>): string {
  const sorted = [...files].sort();
  const list: OwnList = { files: sorted, seal: sealOf(sorted) };
  return `${JSON.stringify(list, null, 1)}\n`;
}

/** A hash of what Baybook writes down for itself in the output folder, by which it knows it again. */
export function sealOf(written: unknown): string {
  return contentHash(JSON.stringify(written));
}

/** The files of a list that nobody has edited; `null` of any other. */
function sealedIn(text: string): readonly string[] | null {
  try {
    const { files, seal }: Partial<OwnList> = JSON.parse(text);
    return Array.isArray(files) && seal === sealOf(files) ? files : null;
  } catch {
    return null;
  }
}

/** Whether an entry of the list is a path within the folder: the list may have been edited. */
export function isPathWithin(path: unknown): path is string {
  return (
    typeof path === 'string' &&
    path !== '' &&
    path.split('/').every((part) => part !== '' && part !== '.' && part !== '..')
  );
}

function readText(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return null;
  }
}

function hashAt(path: string): string | null {
  try {
    return sha256(readFileSync(path));
  } catch {
    return null;
  }
}
