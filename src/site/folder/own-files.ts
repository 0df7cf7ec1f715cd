import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { sha256 } from '../../store/content-hash.ts';
import { listedIn, workerPath } from '../worker.ts';
import type { Disk } from './disk.ts';

/** Lists what Baybook has written into the folder, so that it never touches anything else. */
const listName = '.baybook-files.json';

/**
 * The files that earlier builds have written. Where the list is gone or cannot be read, they are those that the
 * site's own worker names and that are still as it says.
 */
export function readOwnFiles(folder: string): ReadonlySet<string> {
  const listed = readList(join(folder, listName));
  if (listed) return new Set(listed.filter(isPathWithin));
  const named = listedIn(readText(join(folder, workerPath)) ?? '');
  const still = Object.entries(named).filter(
    ([path, hash]) => isPathWithin(path) && hashAt(join(folder, path)) === hash,
  );
  return new Set([...still.map(([path]) => path), ...(still.length > 0 ? [workerPath] : [])]);
}

/** Writes the list anew, aside and then in its place, so that there is always a whole one. */
export function writeOwnFiles(folder: string, files: Iterable<string>, disk: Disk): void {
  const text = `${JSON.stringify([...files].sort(), null, 1)}\n`;
  if (readText(join(folder, listName)) === text) return;
  const aside = join(folder, `${listName}.new`);
  disk.write(aside, text);
  disk.rename(aside, join(folder, listName));
}

function readList(path: string): readonly unknown[] | null {
  const text = readText(path);
  try {
    const files: unknown = text === null ? null : JSON.parse(text);
    return Array.isArray(files) ? files : null;
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
