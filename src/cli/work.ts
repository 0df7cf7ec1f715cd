import { diskFiles } from '../shop/files/disk-files.ts';
import type { Crew } from '../site/guides/crew.ts';
import type { CrewPlan } from '../site/guides/run-guides.ts';
import type { Work } from '../site/work.ts';
import { fileHashes } from '../store/file-hashes.ts';
import type { Io } from './io.ts';

/** Fewer guides than this are done sooner than a thread has started. */
const GUIDES_FOR_A_THREAD = 8;

/** The time in nanoseconds since 1970, as the file system counts it. */
export function nowInNanoseconds(): bigint {
  return BigInt(Date.now()) * 1_000_000n;
}

/** Readies work on the workspace in a folder; `done` keeps what is known of its files for the next run. */
export function workOn(
  root: string,
  io: Io,
  threads = io.threads,
  progress?: (done: number, of: number) => void,
): { readonly work: Work; readonly done: () => void } {
  const hashes = fileHashes(root, io.store, nowInNanoseconds);
  return {
    work: {
      files: diskFiles(root, hashes),
      store: io.store,
      openCrew: (guides, plan) => openThreads(guides, plan, { root, io, threads }),
      ...(progress && { progress }),
    },
    done: hashes.save,
  };
}

/** Threads for so many guides; none where they would cost more than they gain, or cannot share the store. */
async function openThreads(
  guides: number,
  plan: CrewPlan,
  { root, io, threads }: { readonly root: string; readonly io: Io; readonly threads: number },
): Promise<Crew | null> {
  const size = Math.min(threads, Math.floor(guides / GUIDES_FOR_A_THREAD));
  if (size < 2 || !io.store.place) return null;
  const { openCrew } = await import('../site/guides/crew.ts');
  return openCrew({ ...plan, root, store: io.store.place }, size);
}
