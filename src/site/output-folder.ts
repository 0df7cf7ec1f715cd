import { createHash } from 'node:crypto';
import { lstat, mkdir, readdir, readFile, rename, rm, rmdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';

/** Lists what Baybook has written into the folder, so that it never touches anything else. */
const listName = '.baybook-files.json';

/** Where a build is put together before anything in the folder changes. */
const stagingName = '.baybook-staging';

/** What a build has changed in the output folder. */
export interface Published {
  /** Files that are new or changed. */
  readonly written: readonly string[];
  /** Files of earlier builds that are no longer part of the site. */
  readonly removed: readonly string[];
  /** All files of the site. */
  readonly files: readonly string[];
}

/** A build that is being put together beside the site that is still in place. */
export interface Staging {
  /** Adds a file by its path from the site's root, with forward slashes. */
  readonly add: (path: string, content: string | Uint8Array) => Promise<void>;
  /** The paths added so far. */
  readonly paths: () => ReadonlySet<string>;
  /** SHA-256 in hexadecimal of each file added so far, by its path. */
  readonly hashes: () => ReadonlyMap<string, string>;
  /** A file that was added. */
  readonly read: (path: string) => Promise<Uint8Array>;
  /** Puts the files in place. What is in the way stops it before anything is touched. */
  readonly publish: () => Promise<Published | { readonly inTheWay: readonly string[] }>;
  /** Drops what has not been put in place, and the staging folder itself. */
  readonly discard: () => Promise<void>;
}

/** Opens a staging folder within the output folder, so that putting a file in place is one rename. */
export async function openStaging(folder: string): Promise<Staging> {
  const staging = join(folder, stagingName);
  await rm(staging, { recursive: true, force: true });
  await mkdir(staging, { recursive: true });
  const hashes = new Map<string, string>();

  return {
    add: async (path, content) => {
      const hash = hashOf(typeof content === 'string' ? Buffer.from(content) : content);
      if (hashes.get(path) === hash) return;
      if (hashes.has(path)) throw new Error(`two different files want the place ${path}`);
      hashes.set(path, hash);
      const target = join(staging, path);
      await mkdir(dirname(target), { recursive: true });
      await writeFile(target, content);
    },
    paths: () => new Set(hashes.keys()),
    hashes: () => new Map(hashes),
    read: (path) => readFile(join(staging, path)),
    publish: () => swap(folder, staging, hashes),
    discard: () => rm(staging, { recursive: true, force: true }),
  };
}

async function swap(
  folder: string,
  staging: string,
  hashes: ReadonlyMap<string, string>,
): Promise<Published | { readonly inTheWay: readonly string[] }> {
  const earlier = new Set(await readList(folder));
  const files = [...hashes.keys()].sort(pagesLast);
  const written: string[] = [];
  const inTheWay: string[] = [];
  for (const path of files) {
    const present = await presentHash(folder, path);
    if (present === hashes.get(path)) continue;
    if (present === 'blocked' || (present !== null && !earlier.has(path))) inTheWay.push(path);
    else written.push(path);
  }
  if (inTheWay.length > 0) return { inTheWay: inTheWay.sort() };
  const removed = [...earlier].filter((path) => !hashes.has(path)).sort();
  // Until the swap is done both lists count, so that a build that is cut short leaves nothing unaccounted for.
  await writeList(folder, [...new Set([...earlier, ...files])]);
  for (const path of written) {
    await mkdir(dirname(join(folder, path)), { recursive: true });
    await rename(join(staging, path), join(folder, path));
  }
  for (const path of removed) await removeFile(folder, path);
  await writeList(folder, files);
  return { written, removed, files: [...files].sort() };
}

/** Pages last: what they show and link is there before they are. */
function pagesLast(a: string, b: string): number {
  const page = (path: string) => Number(path.endsWith('.html'));
  return page(a) - page(b) || (a < b ? -1 : 1);
}

/** The hash of what lies at a path; `null` for nothing, `blocked` for what no file can take the place of. */
async function presentHash(folder: string, path: string): Promise<string | 'blocked' | null> {
  const parts = path.split('/');
  for (let depth = 1; depth <= parts.length; depth += 1) {
    const found = await lstat(join(folder, ...parts.slice(0, depth))).catch(() => null);
    if (!found) return null;
    // A link could lead out of the folder, into files that are not the site's.
    if (found.isSymbolicLink()) return 'blocked';
    if (depth < parts.length && !found.isDirectory()) return 'blocked';
    if (depth === parts.length && !found.isFile()) return 'blocked';
  }
  return hashOf(await readFile(join(folder, path)));
}

/** Removes a file that an earlier build wrote, and the folders that this leaves empty. */
async function removeFile(folder: string, path: string): Promise<void> {
  if ((await presentHash(folder, path)) === 'blocked') return;
  await rm(join(folder, path), { force: true });
  for (let parent = dirname(path); parent !== '.'; parent = dirname(parent)) {
    const left = await readdir(join(folder, parent)).catch(() => null);
    if (left === null || left.length > 0) return;
    await rmdir(join(folder, parent));
  }
}

async function readList(folder: string): Promise<readonly string[]> {
  const text = await readFile(join(folder, listName), 'utf8').catch(() => '[]');
  try {
    const files: unknown = JSON.parse(text);
    return Array.isArray(files) ? files.filter(isInside) : [];
  } catch {
    return [];
  }
}

/** Whether an entry of the list is a path within the folder: the list may have been edited. */
function isInside(path: unknown): path is string {
  return (
    typeof path === 'string' && path !== '' && path.split('/').every((part) => part !== '' && part !== '..')
  );
}

async function writeList(folder: string, files: readonly string[]): Promise<void> {
  const text = `${JSON.stringify([...files].sort(), null, 1)}\n`;
  if ((await readFile(join(folder, listName), 'utf8').catch(() => null)) === text) return;
  await writeFile(join(folder, listName), text);
}

function hashOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}
