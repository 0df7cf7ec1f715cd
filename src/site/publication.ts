import type { Guide } from '../model/guide.ts';
import type { Job } from '../model/job.ts';
import type { Platform, Shop } from '../model/shop.ts';
import type { GuideSummary } from '../pages/reference/guide-summary.ts';
import type { ReleaseStanding } from '../release/standing.ts';
import type { Verdict } from '../shop/inspect/verdict.ts';
import type { Workspace } from '../shop/open-workspace.ts';
import type { MadeGuide } from './guides/made.ts';
import type { GuideResult } from './guides/turn.ts';

/** A guide that is published, with its job. */
export interface PublishedGuide {
  readonly guide: Guide;
  readonly job: Job;
  /** How it stands to its latest release; absent where it was never released. */
  readonly standing?: ReleaseStanding | null;
}

/** What of a workspace is published: what the sound guides and visits gave, and the platforms without an error. */
export interface Publication {
  readonly shop: Shop;
  readonly platforms: readonly Platform[];
  /** What the rest of the site needs of each guide. */
  readonly summaries: readonly GuideSummary[];
  /** The same of each visit. */
  readonly visits: readonly GuideSummary[];
  readonly made: readonly MadeGuide[];
}

/** Sorts out what may be published. */
export function publicationOf(
  { shop }: Pick<Workspace, 'shop'>,
  results: readonly Pick<GuideResult, 'facts' | 'findings' | 'summary' | 'made'>[],
  verdict: Pick<Verdict, 'soundGuides' | 'findings'>,
): Publication {
  const platforms = soundPlatforms(shop, verdict);
  const sound = results.filter(({ facts }) => facts && verdict.soundGuides.has(facts.id));
  // A visit stands with each of its guides.
  const visits = results.filter(
    ({ summary, findings }) =>
      summary?.visit?.every((id) => verdict.soundGuides.has(id)) &&
      findings.every(({ severity }) => severity !== 'error'),
  );
  return {
    shop: { ...shop, platforms: new Map(platforms.map((platform) => [platform.id, platform])) },
    platforms,
    summaries: sound.flatMap(({ summary }) => summary ?? []),
    visits: visits.flatMap(({ summary }) => summary ?? []),
    made: [...sound, ...visits].flatMap(({ made }) => made ?? []),
  };
}

/** The files of guides and platforms that stay out of the site, so that no page may link to theirs. */
export function unpublishedFiles(
  { shop, found }: Pick<Workspace, 'shop' | 'found'>,
  results: readonly GuideResult[],
  verdict: Pick<Verdict, 'soundGuides' | 'findings'>,
): ReadonlySet<string> {
  const published = new Set([
    ...soundPlatforms(shop, verdict).map(({ file }) => file),
    ...results.flatMap(({ facts }) => (facts && verdict.soundGuides.has(facts.id) ? [facts.file] : [])),
  ]);
  return new Set([...found.guides, ...found.platforms].filter((path) => !published.has(path)));
}

function soundPlatforms(shop: Shop, { findings }: Pick<Verdict, 'findings'>): readonly Platform[] {
  const faulty = new Set(findings.filter(({ severity }) => severity === 'error').map(({ at }) => at.file));
  return [...shop.platforms.values()].filter(({ file }) => !faulty.has(file));
}
