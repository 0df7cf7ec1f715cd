import { ChangedMeanwhile } from '../shop/files/steady-files.ts';
import { conclude, type Verdict } from '../shop/inspect/verdict.ts';
import { noStore, readContent } from '../store/store.ts';
import { type AssembledSite, assembleSite } from './assemble.ts';
import type { MadeSite, SiteOptions } from './build-site.ts';
import { KEPT_UNASKED } from './device/parcels.ts';
import type { SiteFile } from './folder/output-folder.ts';
import type { MadeFile } from './guides/made.ts';
import { runGuides } from './guides/run-guides.ts';
import { inTightHeap } from './guides/tight-heap.ts';
import { type GuideResult, type TurnGround, takeTurn, turnGround } from './guides/turn.ts';
import { type OpenWork, openWork } from './open-work.ts';
import { publicationOf, unpublishedFiles } from './publication.ts';
import { sitePages } from './site-pages.ts';
import type { Work } from './work.ts';

/** Checks a workspace and makes its site, guide by guide; nothing of it is in place yet. */
export async function makeSite(
  work: Work,
  identity: string,
  refuse: SiteOptions['refuse'],
): Promise<MadeSite> {
  const open = await openWork(work, identity, true);
  const { workspace, ground } = open;
  const { guides, visits } = workspace.found;
  const run = await runGuides([...guides, ...visits], ground, work);
  const [ofGuides, ofVisits] = [run.results.slice(0, guides.length), run.results.slice(guides.length)];
  const verdict = conclude(workspace, ofGuides, ofVisits);
  const why = refuse(verdict);
  const lost = run.results.flatMap(({ problems, made }) => (made ? [] : problems));
  const stopped = { verdict, notices: run.notices, files: new Map() };
  if (why !== null || lost.length > 0)
    return { ...stopped, problems: [...(why === null ? [] : [why]), ...lost] };

  const unpublished = unpublishedFiles(workspace, run.results, verdict);
  const pageOf = sitePages(workspace, unpublished);
  const results = await withoutLinksTo(unpublished, run.results, turnGround({ ...ground, pageOf }));
  const site = await inTightHeap(() => assemble(open, results, verdict, pageOf)).catch((error: unknown) => {
    if (error instanceof ChangedMeanwhile) return { files: [], notices: [], problems: [error.message] };
    throw error;
  });
  const makers = new Map(
    results.flatMap(({ path, made }) => made?.files.map((file) => [file.path, path] as const) ?? []),
  );
  return {
    verdict,
    notices: [...run.notices, ...site.notices],
    problems: site.problems,
    files: new Map(site.files.map((file) => [file.path, siteFile(file, makers.get(file.path), ground)])),
  };
}

/** Guides that link to what stays out of the site are made once more, without those links. */
async function withoutLinksTo(
  unpublished: ReadonlySet<string>,
  results: readonly GuideResult[],
  ground: TurnGround,
): Promise<readonly GuideResult[]> {
  const all: GuideResult[] = [];
  for (const result of results) {
    const again = result.made?.asksFor.some((path) => unpublished.has(path));
    all.push(again ? await takeTurn(result.path, ground) : result);
  }
  return all;
}

function assemble(
  { workspace, ground }: OpenWork,
  results: readonly GuideResult[],
  verdict: Verdict,
  pageOf: (path: string) => string | null,
): Promise<AssembledSite> {
  const { kit, store, basis } = ground;
  const { files, shown } = workspace;
  if (!kit) throw new Error('a site is made with a kit');
  const publication = publicationOf(workspace, results, verdict);
  return assembleSite(publication, { files, shown, store, kit, basis, pageOf, keptUnasked: KEPT_UNASKED });
}

/** A file for the output folder. What the store has lost since is made once more. */
function siteFile({ path, hash, bytes }: MadeFile, maker: string | undefined, ground: TurnGround): SiteFile {
  return {
    hash,
    bytes: async () => {
      const known = bytes ?? readContent(ground.store, hash);
      if (known) return known;
      const again = maker === undefined ? null : await takeTurn(maker, { ...ground, store: noStore });
      const file = again?.made?.files.find((one) => one.path === path);
      if (file?.hash === hash && file.bytes) return file.bytes;
      throw new Error(`${path} is neither in the store nor made again to the same bytes; build again`);
    },
  };
}
