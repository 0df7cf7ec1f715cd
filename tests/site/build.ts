import { guideFacts } from '../../src/checks/index.ts';
import { summaryOf } from '../../src/pages/reference/guide-summary.ts';
import { cardsOf } from '../../src/pages/rehearsal/cards.ts';
import { type NoteAsk, watched } from '../../src/shop/asks.ts';
import type { WorkspaceFiles } from '../../src/shop/files/workspace-files.ts';
import type { Inspection } from '../../src/shop/inspect/inspection.ts';
import { assembleSite } from '../../src/site/assemble.ts';
import { KEPT_UNASKED } from '../../src/site/device/parcels.ts';
import type { Published } from '../../src/site/folder/output-folder.ts';
import { openOutputFolder } from '../../src/site/folder/output-folder.ts';
import { readFonts } from '../../src/site/fonts.ts';
import { makeGuide } from '../../src/site/guides/make-guide.ts';
import { readKit } from '../../src/site/kit.ts';
import { type Publication, publicationOf } from '../../src/site/publication.ts';
import { sitePages } from '../../src/site/site-pages.ts';
import { fileHashes } from '../../src/store/file-hashes.ts';
import { noStore } from '../../src/store/store.ts';
import { pictureStore } from '../picture-store.ts';

/** What became of a site. */
export type SiteOutcome =
  | (Published & { readonly ok: true; readonly notices: readonly string[] })
  | { readonly ok: false; readonly problems: readonly string[] };

/** What is published of a workspace that is held in memory, without the pages of its guides. */
export function publicationFor(found: Inspection): Publication {
  return publicationOf(found, guidesOf(found), found);
}

function guidesOf({ guides, shop }: Pick<Inspection, 'guides' | 'shop'>) {
  return guides.map(({ guide, job }) => ({
    facts: guideFacts(guide),
    findings: [],
    summary: summaryOf(guide, job, shop, cardsOf(guide, job, shop), null),
    made: null,
  }));
}

/** Builds the site of guides that a test has made, as the program builds that of guides it has read. */
export async function buildSite(
  found: Inspection,
  files: WorkspaceFiles,
  folder: string,
  { keepGoing = false, keptUnasked = KEPT_UNASKED } = {},
): Promise<SiteOutcome> {
  if (!keepGoing && found.findings.some(({ severity }) => severity === 'error'))
    return { ok: false, problems: ['the guides have errors, so the site stays as it is'] };
  const { shop } = found;
  const kit = await readKit(files, shop.files.keys(), await readFonts());
  const store = await pictureStore();
  const note: NoteAsk = () => undefined;
  const seen = watched({ shop, procedures: new Map(), files }, note);
  const names = {
    guides: found.guides.map(({ guide }) => guide.file),
    platforms: [...shop.platforms.values()].map(({ file }) => file),
    procedures: [],
    visits: [],
  };
  const pageOf = sitePages({ found: names });
  // A visit is made like a guide, and no fact of it lies between guides.
  const visits = guidesOf({ guides: found.visits, shop }).map((one) => ({ ...one, facts: null }));
  const results = [...guidesOf(found), ...visits];
  const made = await Promise.all(
    [...found.guides, ...found.visits].map((one) =>
      makeGuide(one, {
        ...{ seen, note, pageOf, kit, store, pageAlone: false },
        cards: cardsOf(one.guide, one.job, seen.shop),
      }),
    ),
  );
  const publication = publicationOf(
    found,
    results.map(({ summary, ...result }, index) => {
      const own = made[index] ?? null;
      return { ...result, summary: { ...summary, picture: own?.face ?? null }, made: own };
    }),
    found,
  );
  const site = await assembleSite(publication, {
    files,
    shown: files,
    store,
    kit,
    basis: 'test',
    pageOf,
    keptUnasked,
  });
  if (site.problems.length > 0) return { ok: false, problems: site.problems };
  const output = openOutputFolder(folder, 0);
  if ('heldBy' in output) return { ok: false, problems: [output.heldBy] };
  const wanted = site.files.map(({ path, hash, bytes }) => {
    const kept = () => bytes ?? store.read(`${hash}.bin`) ?? Buffer.from('lost');
    return [path, { hash, bytes: kept }] as const;
  });
  const hashes = fileHashes(folder, noStore, () => 0n);
  const published = await output.publish(new Map(wanted), hashes);
  output.close();
  if ('inTheWay' in published) {
    const words = 'in the output folder was not written by Baybook; move it away, or choose another folder';
    return { ok: false, problems: published.inTheWay.map((path) => `${path} ${words}`) };
  }
  return { ok: true, ...published, notices: site.notices };
}
