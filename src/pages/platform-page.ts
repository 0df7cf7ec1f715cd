import type { Platform } from '../model/shop.ts';
import { blockViews } from './blocks.ts';
import { frameOf, type GuideContext, type PageContext } from './context.ts';
import { entriesOf, type PublishedGuide } from './index-page.ts';
import type { PlatformView } from './overview-views.ts';
import { proseMarkup } from './prose.ts';

/** A vehicle platform: its description, how its vehicles differ, and its guides. */
export function platformPage(
  platform: Platform,
  guides: readonly PublishedGuide[],
  page: PageContext,
): PlatformView {
  const context: GuideContext = {
    ...page,
    guide: { builds: platform.builds, items: platform.parts, templates: new Map() },
    job: { plans: [], decidingOptions: [] },
    steps: new Map(),
    listed: new Set(),
  };
  const titled = platform.sections.filter(({ id }) => id !== null);
  return {
    frame: frameOf(page, { title: platform.title.value }),
    title: platform.title.value,
    options: platform.builds.options.map(({ name, choices }) => ({
      name,
      choices: choices ? choices.map((choice) => choice.name).join(', ') : 'yes or no',
    })),
    opening: blockViews(
      platform.sections.filter(({ id }) => id === null).flatMap(({ blocks }) => blocks),
      context,
      null,
    ),
    sections: titled.map(({ id, title, blocks }) => ({
      id,
      title: proseMarkup(title, { context, stepSide: null }),
      blocks: blockViews(blocks, context, null),
    })),
    guides: entriesOf(platform.id, guides, page),
  };
}
