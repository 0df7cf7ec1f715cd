import { createHash } from 'node:crypto';
import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

/** Finished picture work, kept between builds in a folder that may be deleted at any time. */
export interface PictureCache {
  /** The bytes kept under a name, or `null`. */
  readonly read: (name: string) => Promise<Uint8Array | null>;
  /** Keeps bytes under a name. A full or read-only disk only costs the next build its time. */
  readonly write: (name: string, bytes: Uint8Array) => Promise<void>;
}

/** A cache in a folder, which is made when it is first written to. */
export function pictureCache(folder: string): PictureCache {
  return {
    read: async (name) => {
      try {
        return await readFile(join(folder, name));
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
  };
}

/** A cache that keeps nothing. */
export const noCache: PictureCache = {
  read: async () => null,
  write: async () => undefined,
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
