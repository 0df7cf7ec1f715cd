import { type BigIntStats, lstatSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { contentHash, sha256 } from './content-hash.ts';
import { readJson, type Store, writeJson } from './store.ts';

/** The hashes of the files below a folder, those of earlier runs among them as long as a file has not changed. */
export interface FileHashes {
  /** SHA-256 of a file in hexadecimal, by its path from the folder; `null` where it is not a file, or unreadable. */
  readonly of: (path: string) => string | null;
  /** Keeps what is known for the next run. */
  readonly save: () => void;
}

/** What tells one state of a file from another: size, times in nanoseconds, and inode. */
type Known = readonly [state: string, hash: string];

/** Nanoseconds. A file that was changed so shortly before it was read may be changed again within one tick of its clock. */
const tick = 50_000_000n;
/** The same for file systems that keep whole seconds. */
const coarseTick = 2_500_000_000n;
const second = 1_000_000_000n;

/**
 * Opens what is known of a folder's files.
 *
 * @param now the time in nanoseconds since 1970
 */
export function fileHashes(folder: string, store: Store, now: () => bigint): FileHashes {
  const name = `seen-${contentHash(folder)}.json`;
  const earlier = new Map(Object.entries(readJson<Record<string, Known>>(store, name) ?? {}));
  const current = new Map<string, Known>();
  return {
    of: (path) => {
      const full = join(folder, path);
      try {
        const about = lstatSync(full, { bigint: true });
        if (!about.isFile()) return null;
        const state = stateOf(about);
        const [state_, hash_] = current.get(path) ?? earlier.get(path) ?? ['', ''];
        if (state_ === state) {
          current.set(path, [state, hash_]);
          return hash_;
        }
        const before = now();
        const hash = sha256(readFileSync(full));
        if (isSettled(about, before)) current.set(path, [state, hash]);
        return hash;
      } catch {
        return null;
      }
    },
    save: () => void writeJson(store, name, Object.fromEntries(current)),
  };
}

function stateOf({ size, mtimeNs, ctimeNs, ino }: BigIntStats): string {
  return `${size} ${mtimeNs} ${ctimeNs} ${ino}`;
}

/** Whether any later change is sure to show in the times of the file. */
function isSettled({ mtimeNs, ctimeNs }: BigIntStats, now: bigint): boolean {
  const latest = mtimeNs > ctimeNs ? mtimeNs : ctimeNs;
  return now - latest > (latest % second === 0n ? coarseTick : tick);
}
