import { ownIdentity } from '../site/identity.ts';
import { browserScript } from '../site/scripts.ts';
import type { Work } from '../site/work.ts';
import { pictureBench } from './bench/bench.ts';
import { followChanges } from './follow-changes.ts';
import { servePreview } from './server.ts';
import { siteUnderPen } from './site-under-pen.ts';

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
  const takeIn = async (paths: readonly string[], whole: boolean): Promise<void> => {
    await site.changed(paths, whole);
    await server.tell();
  };
  const follower = followChanges(root, work.files, takeIn, trouble);
  await follower.ready;
  return {
    port: server.port,
    close: async () => {
      await follower.close();
      await server.close();
    },
  };
}
