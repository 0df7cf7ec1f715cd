import type { Guide } from '../model/guide.ts';
import type { Job } from '../model/job.ts';
import type { Platform, Shop } from '../model/shop.ts';
import { guideFolder, platformFolder } from '../pages/frame/context.ts';
import { type GuideSummary, summaryOf } from '../pages/reference/guide-summary.ts';
import type { Inspection } from '../shop/inspection.ts';

/** A guide that is published, with its job. */
export interface PublishedGuide {
  readonly guide: Guide;
  readonly job: Job;
}

/** What of a workspace is published: the sound guides with their jobs, and the platforms without an error. */
export interface Publication {
  readonly shop: Shop;
  readonly guides: readonly PublishedGuide[];
  readonly platforms: readonly Platform[];
  /** What the rest of the site needs of each guide. */
  readonly summaries: readonly GuideSummary[];
}

/** Sorts out what may be published. */
export function publicationOf({ shop, guides, soundGuides, findings }: Inspection): Publication {
  const faulty = new Set(findings.filter(({ severity }) => severity === 'error').map(({ at }) => at.file));
  const platforms = [...shop.platforms.values()].filter(({ file }) => !faulty.has(file));
  const names = new Set(platforms.map(({ id }) => id));
  const published = { ...shop, platforms: new Map(platforms.map((platform) => [platform.id, platform])) };
  const sound = guides.filter(({ guide }) => soundGuides.has(guide.id) && names.has(guide.platform.value));
  return {
    shop: published,
    platforms,
    guides: sound,
    summaries: sound.map(({ guide, job }) => summaryOf(guide, job, published)),
  };
}

/** The pages that stand for files of the workspace: links between guides lead from one to the other. */
export function pagesBySource({ summaries, platforms }: Publication): ReadonlyMap<string, string> {
  return new Map([
    ...summaries.map((guide) => [guide.file, `${guideFolder(guide)}index.html`] as const),
    ...platforms.map(({ id, file }) => [file, `${platformFolder(id)}index.html`] as const),
  ]);
}
