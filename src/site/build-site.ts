import type { Inspection } from '../shop/inspection.ts';
import type { WorkspaceFiles } from '../shop/workspace-files.ts';
import { fillSite } from './fill-site.ts';
import type { SiteOptions } from './options.ts';
import { openStaging, type Published } from './output-folder.ts';

/** A site that was published, or why nothing was touched, one sentence each. */
export type SiteOutcome =
  | (Published & {
      readonly ok: true;
      /** What whoever builds the site should know of it, one line each. */
      readonly notices: readonly string[];
    })
  | { readonly ok: false; readonly problems: readonly string[] };

/**
 * Publishes a checked workspace as a site. It is put together in a staging folder and then swapped in file by
 * file: what has not changed is not written, what Baybook has not written is not touched, and a build that
 * fails leaves the last site as it was. Throws what the file system refuses.
 *
 * @param folder the output folder, made where it is missing
 */
export async function buildSite(
  inspection: Inspection,
  files: WorkspaceFiles,
  folder: string,
  options: SiteOptions = {},
): Promise<SiteOutcome> {
  if (!options.keepGoing && inspection.findings.some(({ severity }) => severity === 'error')) {
    return { ok: false, problems: ['the guides have errors, so the site stays as it is'] };
  }
  const staging = await openStaging(folder);
  try {
    const { problems, notices } = await fillSite(inspection, files, staging, options);
    if (problems.length > 0) return { ok: false, problems };
    const published = await staging.publish();
    if ('inTheWay' in published) return { ok: false, problems: published.inTheWay.map(inTheWayWords) };
    return { ok: true, notices, ...published };
  } finally {
    await staging.discard();
  }
}

function inTheWayWords(path: string): string {
  return `${path} in the output folder was not written by Baybook; move it away, or choose another folder`;
}
