import { createHash } from 'node:crypto';
import { lstat, mkdir, readdir, readFile, rename, rm, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

/** Finished picture work, kept between builds in a folder that may be deleted at any time. */
export interface PictureCache {
  /** The bytes kept under a name, or `null`. */
  readonly read: (name: string) => Promise<Uint8Array | null>;
  /** Keeps bytes under a name. A full or read-only disk only costs the next build its time. */
  readonly write: (name: string, bytes: Uint8Array) => Promise<void>;
  /** Removes what has been neither read nor written for so many days, and nothing that the cache has not written. */
  readonly prune: (days: number) => Promise<void>;
}

/** The names under which this room keeps its work, and what a build that was stopped leaves of them. */
const ownName = /^(?:(?:set|inspect)-[0-9a-f]{20}\.json|[0-9a-f]{20}\.(?:webp|jpe?g|png))(?:\.\d+\.part)?$/;

/** A cache in a folder, which is made when it is first written to; `now` is noted as the time of its use. */
export function pictureCache(folder: string, now: Date): PictureCache {
  return {
    read: async (name) => {
      const path = join(folder, name);
      try {
        const bytes = await readFile(path);
        // The time of its last use decides what is pruned; a cache that cannot be written to is never pruned.
        await utimes(path, now, now).catch(() => undefined);
        return bytes;
      } catch {
        return null;
      }
    },
    write: async (name, bytes) => {
      // Written aside and renamed, so that a build that is stopped leaves no half file behind.
      const aside = join(folder, `${name}.${process.pid}.part`);
      try {
        await mkdir(folder, { recursive: true });
        await writeFile(aside, bytes);
        await rename(aside, join(folder, name));
      } catch {
        return;
      }
    },
    prune: async (days) => {
      const since = now.getTime() - days * 24 * 3_600_000;
      const names = await readdir(folder).catch(() => []);
      for (const name of names.filter((one) => ownName.test(one))) {
        const path = join(folder, name);
        const about = await lstat(path).catch(() => null);
        if (about?.isFile() && about.mtimeMs < since) await rm(path, { force: true }).catch(() => undefined);
      }
    },
  };
}

/** A cache that keeps nothing. */
export const noCache: PictureCache = {
  read: async () => null,
  write: async () => undefined,
  prune: async () => undefined,
};

/** What an earlier build kept as JSON under a name; `null` where nothing sound is there. */
export async function readJson<T>(cache: PictureCache, name: string): Promise<T | null> {
  const bytes = await cache.read(name);
  try {
    return bytes && JSON.parse(Buffer.from(bytes).toString());
  } catch {
    return null;
  }
}

/** Keeps plain data as JSON under a name. */
export async function writeJson(cache: PictureCache, name: string, value: unknown): Promise<void> {
  await cache.write(name, Buffer.from(JSON.stringify(value)));
}

/** The first 20 hexadecimal digits (80 bits) of the SHA-256 of some parts, which are told apart by their lengths. */
export function contentHash(...parts: readonly (string | Uint8Array)[]): string {
  const hash = createHash('sha256');
  for (const part of parts) {
    const bytes = typeof part === 'string' ? Buffer.from(part) : part;
    if (parts.length > 1) hash.update(`${bytes.length}:`);
    hash.update(bytes);
  }
  return hash.digest('hex').slice(0, 20);
}
