import type { Platform, Shop } from '../model/shop.ts';
import { guideFolder, platformFolder } from '../pages/frame/context.ts';
import type { PublishedGuide } from '../pages/reference/index-page.ts';
import type { Inspection } from '../shop/inspection.ts';

/** What of a workspace is published: the sound guides with their jobs, and the platforms without an error. */
export interface Publication {
  readonly shop: Shop;
  readonly guides: readonly PublishedGuide[];
  readonly platforms: readonly Platform[];
}

/** Sorts out what may be published. */
export function publicationOf({ shop, guides, soundGuides, findings }: Inspection): Publication {
  const faulty = new Set(findings.filter(({ severity }) => severity === 'error').map(({ at }) => at.file));
  const platforms = [...shop.platforms.values()].filter(({ file }) => !faulty.has(file));
  const names = new Set(platforms.map(({ id }) => id));
  return {
    shop: { ...shop, platforms: new Map(platforms.map((platform) => [platform.id, platform])) },
    platforms,
    guides: guides.filter(({ guide }) => soundGuides.has(guide.id) && names.has(guide.platform.value)),
  };
}

/** The pages that stand for files of the workspace: links between guides lead from one to the other. */
export function pagesBySource({ guides, platforms }: Publication): ReadonlyMap<string, string> {
  return new Map([
    ...guides.map(({ guide }) => [guide.file, `${guideFolder(guide)}index.html`] as const),
    ...platforms.map(({ id, file }) => [file, `${platformFolder(id)}index.html`] as const),
  ]);
}
