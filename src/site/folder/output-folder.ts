import { existsSync, lstatSync, readdirSync, rmdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { foldedName } from '../../shop/names-alike.ts';
import type { FileHashes } from '../../store/file-hashes.ts';
import { type Disk, realDisk } from './disk.ts';
import { dropLock, takeLock } from './lock.ts';
import { listName, ownFilesList, readOwnFiles } from './own-files.ts';
import { isBlocked, lookingOnce, settle, stagingName, switchOver } from './switch.ts';

/** A file of a site that is to be published. */
export interface SiteFile {
  /** SHA-256 in hexadecimal. */
  readonly hash: string;
  /** Comes by its bytes, which have that hash; asked only where they are not in place already. */
  readonly bytes: () => Uint8Array | Promise<Uint8Array>;
}

/** What a build has changed in the output folder. */
export interface Published {
  /** Files that are new or changed. */
  readonly written: readonly string[];
  /** Files of earlier builds that are no longer part of the site. */
  readonly removed: readonly string[];
  /** All files of the site. */
  readonly files: readonly string[];
  /** What to know of the output folder, one sentence each. */
  readonly notices: readonly string[];
}

/** Why nothing was published: files that Baybook has not written stand where it would write. */
export type Blocked = Pick<Published, 'notices'> & { readonly inTheWay: readonly string[] };

/** The output folder, held by one build. */
export interface OutputFolder {
  /**
   * Publishes a site: what has not changed is not written, what Baybook has not written is not touched, and at
   * any moment there is the whole old site or, with what the next command finishes, the whole new one.
   */
  readonly publish: (site: ReadonlyMap<string, SiteFile>, hashes: FileHashes) => Promise<Published | Blocked>;
  readonly close: () => void;
}

/**
 * Takes an output folder, makes it where it is missing, and finishes or undoes what an earlier build left
 * unfinished in it. Throws what the file system refuses.
 *
 * @param now the time in milliseconds since 1970
 */
export function openOutputFolder(
  folder: string,
  now: number,
  disk: Disk = realDisk,
): OutputFolder | { readonly heldBy: string } {
  const isNew = !existsSync(folder);
  disk.makeFolder(folder);
  const taken = takeLock(folder, now, disk);
  if (taken) return taken;
  const found = settle(folder, disk);
  return {
    publish: async (site, hashes) => {
      const published = await publish(folder, site, hashes, disk);
      return { ...published, notices: [...found, ...published.notices] };
    },
    close: () => {
      try {
        if (existsSync(join(folder, stagingName))) settle(folder, disk);
      } finally {
        dropLock(folder, disk);
      }
      if (isNew && readdirSync(folder).length === 0) rmdirSync(folder);
    },
  };
}

async function publish(
  folder: string,
  site: ReadonlyMap<string, SiteFile>,
  hashes: FileHashes,
  disk: Disk,
): Promise<Published | Blocked> {
  const { files: earlier, notices } = readOwnFiles(folder);
  const files = [...site.keys()].sort(pagesLast);
  const wasOurs = sameFileIn(folder, earlier);
  const written: string[] = [];
  const inTheWay: string[] = [];
  const look = lookingOnce();
  for (const path of files) {
    const present = hashes.of(path);
    const blocked = isBlocked(folder, path, look);
    if (present !== null && present === site.get(path)?.hash && !blocked) continue;
    if (blocked || (present !== null && !earlier.has(path) && !wasOurs(path))) inTheWay.push(path);
    else written.push(path);
  }
  if (inTheWay.length > 0) return { inTheWay: inTheWay.sort(), notices };
  const isStill = sameFileIn(folder, files);
  const removed = [...earlier].filter((path) => !site.has(path) && !isStill(path)).sort();
  if (written.length > 0 || removed.length > 0 || earlier.size !== files.length || notices.length > 0) {
    await stage(folder, written, site, disk);
    // Staged with the rest, so that nothing that takes room is left to be written once the switch is decided on.
    disk.write(join(folder, stagingName, listName), ownFilesList(files));
    switchOver(folder, { put: [...written, listName], remove: removed }, disk);
  }
  return { written, removed, files: [...files].sort(), notices };
}

async function stage(
  folder: string,
  paths: readonly string[],
  site: ReadonlyMap<string, SiteFile>,
  disk: Disk,
): Promise<void> {
  disk.makeFolder(join(folder, stagingName));
  const made = new Set([join(folder, stagingName)]);
  for (const path of paths) {
    const target = join(folder, stagingName, path);
    if (!made.has(dirname(target))) disk.makeFolder(dirname(target));
    made.add(dirname(target));
    disk.write(target, (await site.get(path)?.bytes()) ?? '');
  }
}

/**
 * Tells of a path whether it is one of these files under another name, as A.pdf is a.pdf on a disk that takes large and
 * small letters for the same: to remove the one would take the other.
 */
function sameFileIn(folder: string, files: Iterable<string>): (path: string) => boolean {
  const folded = new Map([...files].map((path) => [foldedName(path), path]));
  const entry = (path: string) => lstatSync(join(folder, path), { throwIfNoEntry: false, bigint: true });
  return (path) => {
    const other = folded.get(foldedName(path));
    if (other === undefined) return false;
    const [one, two] = [entry(path), entry(other)];
    return one !== undefined && one.ino === two?.ino && one.dev === two.dev;
  };
}

/** Pages last: what they show and link is there before they are. */
function pagesLast(a: string, b: string): number {
  const page = (path: string) => Number(path.endsWith('.html'));
  return page(a) - page(b) || (a < b ? -1 : 1);
}
