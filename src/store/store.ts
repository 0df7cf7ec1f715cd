import {
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { contentHash, sha256 } from './content-hash.ts';

/**
 * Finished work, kept between runs in a folder that may be deleted at any time. Losing it, or a part of it, costs
 * the next run its time and nothing else: what is read back is proved by its hash.
 */
export interface Store {
  /** Where it is, and the time of its use in milliseconds since 1970, for another thread to open it too; `null` in memory. */
  readonly place: StorePlace | null;
  /** The bytes kept under a name, or `null`. */
  readonly read: (name: string) => Uint8Array | null;
  /** Keeps bytes under a name; whether that went well. */
  readonly write: (name: string, bytes: Uint8Array) => boolean;
  /** Removes what has been neither read nor written for so many days, and nothing that Baybook has not kept. */
  readonly prune: (days: number) => void;
}

/** A store on disk. */
export interface StorePlace {
  readonly folder: string;
  readonly usedAt: number;
}

/** The names under which work is kept, and what a run that was stopped leaves of them. */
const ownName =
  /^(?:[a-z]+-[0-9a-f]{20}\.json|[0-9a-f]{20}\.(?:webp|jpe?g|png)|[0-9a-f]{64}\.bin)(?:\.\d+\.part)?$/;

const msInDay = 24 * 3_600_000;

/** A store in a folder, which is made when it is first written to; `now` is noted as the time of its use. */
export function folderStore(folder: string, now: Date): Store {
  let made = false;
  return {
    place: { folder, usedAt: now.getTime() },
    read: (name) => {
      const path = join(folder, name);
      try {
        const bytes = readFileSync(path);
        // The time of its last use decides what is pruned; a store that cannot be written to is never pruned.
        try {
          utimesSync(path, now, now);
        } catch {}
        return bytes;
      } catch {
        return null;
      }
    },
    write: (name, bytes) => {
      // Written aside and renamed, so that a run that is stopped leaves no half file behind.
      const aside = join(folder, `${name}.${process.pid}.part`);
      try {
        if (!made) mkdirSync(folder, { recursive: true });
        made = true;
        writeFileSync(aside, bytes);
        renameSync(aside, join(folder, name));
        return true;
      } catch {
        made = false;
        return false;
      }
    },
    prune: (days) => {
      const since = now.getTime() - days * msInDay;
      for (const name of namesIn(folder).filter((one) => ownName.test(one))) {
        const path = join(folder, name);
        try {
          const about = lstatSync(path);
          if (about.isFile() && about.mtimeMs < since) rmSync(path, { force: true });
        } catch {}
      }
    },
  };
}

function namesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

/** A store that lives as long as the program. */
export function memoryStore(): Store {
  const kept = new Map<string, Uint8Array>();
  return {
    place: null,
    read: (name) => kept.get(name) ?? null,
    write: (name, bytes) => {
      kept.set(name, bytes);
      return true;
    },
    prune: () => undefined,
  };
}

/** A store that keeps nothing. */
export const noStore: Store = { place: null, read: () => null, write: () => false, prune: () => undefined };

/** Plain data that an earlier run kept under a name; `null` where nothing sound is there. */
export function readJson<T>(store: Store, name: string): T | null {
  const bytes = store.read(name);
  if (!bytes) return null;
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString();
  const end = text.indexOf('\n');
  const json = text.slice(end + 1);
  try {
    return text.slice(0, end) === contentHash(json) ? JSON.parse(json) : null;
  } catch {
    return null;
  }
}

/** Keeps plain data as JSON under a name, behind a line with its hash; whether that went well. */
export function writeJson(store: Store, name: string, value: unknown): boolean {
  const json = JSON.stringify(value);
  return store.write(name, Buffer.from(`${contentHash(json)}\n${json}`));
}

/** Bytes that are kept under their own hash; `null` where they are missing or damaged. */
export function readContent(store: Store, hash: string): Uint8Array | null {
  const bytes = store.read(`${hash}.bin`);
  return bytes && sha256(bytes) === hash ? bytes : null;
}

/** Keeps bytes under their hash; whether that went well. */
export function writeContent(store: Store, hash: string, bytes: Uint8Array): boolean {
  return store.write(`${hash}.bin`, bytes);
}
