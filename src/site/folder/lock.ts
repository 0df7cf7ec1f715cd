import { readFileSync, statSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import type { Disk } from './disk.ts';

/** Stands in the output folder while a build is at work on it. */
const lockName = '.baybook-lock';

/** Milliseconds in which a build that runs has put its name into its lock: one that was killed before never does. */
const NAMED_WITHIN = 10_000;

/** Who holds a lock. */
interface Owner {
  readonly process: number;
  readonly host: string;
}

/**
 * Takes the folder for this process; otherwise says in a sentence who has it, and since when.
 *
 * @param now the time in milliseconds since 1970
 */
export function takeLock(folder: string, now: number, disk: Disk): { readonly heldBy: string } | null {
  const path = join(folder, lockName);
  const own = JSON.stringify({ process: process.pid, host: hostname() } satisfies Owner);
  // Once more after a lock that nobody holds any longer was cleared away.
  for (let attempt = 0; attempt < 2; attempt += 1) {
    try {
      disk.create(path, own);
      return null;
    } catch (error) {
      const { code, syscall } = error as NodeJS.ErrnoException;
      // On a full disk it is made without the name in it, and nobody would hold it.
      if (syscall === 'write') disk.remove(path);
      if (code !== 'EEXIST') throw error;
      const found = readLock(path);
      const gone = found !== null && (isGone(found) || (found === '' && ageOf(path, now) > NAMED_WITHIN));
      if (found !== null && !gone) return { heldBy: heldWords(found, path, now) };
      if (found !== null) clearLock(path, found, disk);
    }
  }
  return { heldBy: 'another build has just begun to write to the output folder; wait until it is done' };
}

/** Gives the folder back. */
export function dropLock(folder: string, disk: Disk): void {
  disk.remove(join(folder, lockName));
}

function readLock(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return null;
  }
}

function ownerOf(text: string): Partial<Owner> {
  try {
    const owner: unknown = JSON.parse(text);
    return typeof owner === 'object' && owner !== null ? owner : {};
  } catch {
    return {};
  }
}

/** Whether the process that took a lock runs no more; of another host nobody knows. */
function isGone(text: string): boolean {
  const { process: id, host } = ownerOf(text);
  if (host !== hostname() || typeof id !== 'number') return false;
  try {
    process.kill(id, 0);
    return false;
  } catch (error) {
    // "Not permitted" says that it runs, for somebody else.
    return (error as NodeJS.ErrnoException).code === 'ESRCH';
  }
}

/** Clears a lock away, unless another build has taken it in the meantime. */
function clearLock(path: string, found: string, disk: Disk): void {
  const aside = `${path}-${process.pid}`;
  try {
    disk.rename(path, aside);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return;
    throw error;
  }
  if (readLock(aside) === found) disk.remove(aside);
  else disk.rename(aside, path);
}

function heldWords(text: string, path: string, now: number): string {
  const { process: id, host } = ownerOf(text);
  const owner = id === undefined ? 'another build' : `another build (process ${id} on ${host})`;
  return `${owner} has been writing to the output folder for ${ageWords(path, now)}; wait until it is done, or delete ${lockName} there if it no longer runs`;
}

function ageWords(path: string, now: number): string {
  const seconds = Math.max(0, Math.round(ageOf(path, now) / 1000));
  if (seconds < 120) return `${seconds} s`;
  return seconds < 7200 ? `${Math.round(seconds / 60)} min` : `${Math.round(seconds / 3600)} h`;
}

/** In milliseconds; none for a lock that has just gone. */
function ageOf(path: string, now: number): number {
  try {
    return now - statSync(path).mtimeMs;
  } catch {
    return 0;
  }
}
