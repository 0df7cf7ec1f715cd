import { relative, sep } from 'node:path';
import { watch } from 'chokidar';
import { ownIdentity } from '../site/identity.ts';
import { browserScript } from '../site/scripts.ts';
import type { Work } from '../site/work.ts';
import { pictureBench } from './bench/bench.ts';
import { type PreviewServer, servePreview } from './server.ts';
import { siteUnderPen } from './site-under-pen.ts';

/** Milliseconds in which a save of several files, or of one in several pieces, is taken as one. */
const TOGETHER = 20;

/** A preview at work. */
export interface Preview {
  readonly port: number;
  readonly close: () => Promise<void>;
}

/**
 * Serves a workspace as a site that follows the pen.
 *
 * @param root the folder of the workspace
 * @param port 0 for any that is free
 * @param trouble is told in one line what keeps the preview from following
 */
export async function startPreview(
  work: Work,
  root: string,
  port: number,
  trouble: (line: string) => void,
): Promise<Preview> {
  const site = await siteUnderPen(work, ownIdentity());
  const scripts = { follow: await browserScript('follow'), bench: await browserScript('bench') };
  const server = await servePreview(site, pictureBench(root, work.files, site.known), scripts, port);
  const follower = followChanges(root, site.changed, server, trouble);
  await follower.ready;
  return {
    port: server.port,
    close: async () => {
      await follower.close();
      await server.close();
    },
  };
}

/** Hands on what changes in a folder, one change after another. */
function followChanges(
  root: string,
  changed: (paths: readonly string[], whole: boolean) => Promise<void>,
  { tell }: Pick<PreviewServer, 'tell'>,
  trouble: (line: string) => void,
): { readonly ready: Promise<void>; readonly close: () => Promise<void> } {
  const waiting = new Set<string>();
  let whole = false;
  let timer: NodeJS.Timeout | null = null;
  let work = Promise.resolve();
  const takeIn = async (): Promise<void> => {
    const paths = [...waiting];
    const all = whole;
    waiting.clear();
    whole = false;
    try {
      await changed(paths, all);
      await tell();
    } catch (error) {
      trouble(error instanceof Error ? error.message : String(error));
    }
  };
  const watcher = watch(root, {
    ignoreInitial: true,
    ignored: (path) => /(?:^|[\\/])(?:\.[^\\/]+|node_modules)$/.test(relative(root, path)),
  });
  watcher.on('all', (event, full) => {
    const path = relative(root, full).split(sep).join('/').normalize('NFC');
    waiting.add(path);
    whole ||= event !== 'change' || !/^(?:[^/]+\/guide|visits\/[^/]+)\.md$/.test(path);
    if (timer) clearTimeout(timer);
    timer = setTimeout(() => {
      work = work.then(takeIn);
    }, TOGETHER);
  });
  watcher.on('error', (error) => trouble(error instanceof Error ? error.message : String(error)));
  return {
    ready: new Promise((ready) => watcher.once('ready', () => ready())),
    close: async () => {
      if (timer) clearTimeout(timer);
      await watcher.close();
      await work;
    },
  };
}
