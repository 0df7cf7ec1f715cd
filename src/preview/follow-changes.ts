import { relative, sep } from 'node:path';
import { watch } from 'chokidar';
import type { WorkspaceFiles } from '../shop/files/workspace-files.ts';

/** Milliseconds in which a save of several files, or of one in several pieces, is taken as one. */
const TOGETHER = 20;

/**
 * Milliseconds in which the watcher is silent about a file of which it has just told a change (chokidar's issue 1455:
 * fifty). What was saved meanwhile is found by looking at the file once more.
 */
const SILENCE = 60;

/** The watch over a folder. */
interface Follower {
  /** From here on nothing is missed. */
  readonly ready: Promise<void>;
  readonly close: () => Promise<void>;
}

/**
 * Hands on what changes in the folder of a workspace, one change after another, until all of it has been taken in.
 *
 * @param changed takes in files by path; `whole` where more than the text of guides has changed
 * @param trouble is told in one line why a change could not be taken in
 */
export function followChanges(
  root: string,
  files: Pick<WorkspaceFiles, 'hash'>,
  changed: (paths: readonly string[], whole: boolean) => Promise<void>,
  trouble: (line: string) => void,
): Follower {
  const waiting = new Set<string>();
  let whole = false;
  const taken = new Map<string, string | null>();
  let taking: NodeJS.Timeout | undefined;
  let looking: NodeJS.Timeout | undefined;
  let work = Promise.resolve();
  const note = (path: string, isMore: boolean): void => {
    waiting.add(path);
    whole ||= isMore || !/^(?:[^/]+\/guide|visits\/[^/]+)\.md$/.test(path);
    clearTimeout(taking);
    taking = setTimeout(() => {
      work = work.then(takeIn);
    }, TOGETHER);
  };
  const takeIn = async (): Promise<void> => {
    const paths = [...waiting];
    const all = whole;
    waiting.clear();
    whole = false;
    for (const path of paths) taken.set(path, files.hash(path));
    clearTimeout(looking);
    looking = setTimeout(lookAgain, SILENCE);
    try {
      await changed(paths, all);
    } catch (error) {
      trouble(error instanceof Error ? error.message : String(error));
    }
  };
  const lookAgain = (): void => {
    for (const [path, hash] of taken) if (files.hash(path) !== hash) note(path, false);
    taken.clear();
  };
  const watcher = watch(root, {
    ignoreInitial: true,
    ignored: (path) => /(?:^|[\\/])(?:\.[^\\/]+|node_modules)$/.test(relative(root, path)),
  });
  watcher.on('all', (event, full) => {
    note(relative(root, full).split(sep).join('/').normalize('NFC'), event !== 'change');
  });
  watcher.on('error', (error) => trouble(error instanceof Error ? error.message : String(error)));
  return {
    ready: new Promise((ready) => watcher.once('ready', () => ready())),
    close: async () => {
      await watcher.close();
      clearTimeout(taking);
      await work;
      clearTimeout(looking);
    },
  };
}
