import type { Platform } from '../../model/shop.ts';
import { marksSince } from '../../release/standing.ts';
import { frameOf, type GuideContext, guideFolder, type PageContext } from '../frame/context.ts';
import { itemAnchor } from '../frame/mention.ts';
import { proseMarkup } from '../frame/prose.ts';
import type { LinkView } from '../frame/shared-views.ts';
import { ratingWords } from '../overview/limits.ts';
import type { PlatformView } from '../overview/overview-views.ts';
import { CARDS_PAGE, guidesWithCards } from '../rehearsal/cards-page.ts';
import { blockViews } from '../steps/blocks.ts';
import { figureView } from '../steps/figure.ts';
import type { GuideSummary } from './guide-summary.ts';
import { entriesOf } from './index-page.ts';
import { platformZones } from './platform-zones.ts';

/** A vehicle platform: its description, how its vehicles differ, and its guides. */
export function platformPage(
  platform: Platform,
  guides: readonly GuideSummary[],
  page: PageContext,
): PlatformView {
  const context: GuideContext = {
    ...page,
    guide: {
      id: '',
      builds: platform.builds,
      words: platform.words,
      items: platform.parts,
      templates: new Map(),
      visit: null,
      zones: platform.zones,
    },
    job: { plans: [], decidingOptions: [] },
    steps: new Map(),
    marks: marksSince(null),
    listed: new Set(),
    places: '',
    drawing: null,
    twins: new Map(),
  };
  const titled = platform.sections.filter(({ id }) => id !== null);
  const untitled = platform.sections.filter(({ id }) => id === null);
  const vehicle = platformZones(platform, guides, page);
  const opening = untitled.flatMap(({ blocks }) => blocks);
  const figure = platform.drawing?.figure;
  const drawn = vehicle && figure && opening.includes(figure) ? figure : null;
  const partsOf = (ids: readonly string[]) =>
    ids.flatMap((id) => {
      const part = platform.parts.get(id);
      return part ? [{ name: part.noun.label, guides: handledIn(id, platform, guides, page) }] : [];
    });
  const statesOf = (ids: readonly string[]) =>
    ids.flatMap((id) => {
      const state = platform.conditions.get(id);
      return state ? [{ name: state.noun.label, set: state.setWords, clear: state.clearWords }] : [];
    });
  const limitsOf = (ids: readonly string[]) =>
    ids.flatMap((id) => {
      const rating = platform.ratings.get(id);
      return rating ? [{ name: rating.noun.label, value: ratingWords(rating) }] : [];
    });
  return {
    frame: frameOf(page, {
      title: platform.title.value,
      styles: [`${page.root}assets/reference.css`],
      words: platform.words,
    }),
    title: platform.title.value,
    options: platform.builds.options.map(({ name, choices }) => ({
      name,
      choices: choices ? choices.map((choice) => choice.name).join(', ') : 'yes or no',
    })),
    opening: blockViews(
      opening.filter((block) => block !== drawn),
      context,
      null,
    ),
    drawn: drawn && figureView(drawn, context, null),
    openingParts: partsOf(untitled.flatMap(({ parts }) => parts)),
    openingLimits: limitsOf(untitled.flatMap(({ ratings }) => ratings)),
    openingStates: statesOf(untitled.flatMap(({ conditions }) => conditions)),
    sections: titled.map(({ id, title, blocks, parts, conditions, ratings }) => ({
      id,
      title: proseMarkup(title, { context, stepSide: null }),
      blocks: blockViews(blocks, context, null),
      parts: partsOf(parts),
      limits: limitsOf(ratings),
      states: statesOf(conditions),
    })),
    guides: entriesOf(platform.id, guides, page),
    cards:
      guidesWithCards(platform.id, guides).length > 0
        ? { text: 'Break cards of all its guides', href: CARDS_PAGE }
        : null,
    vehicle: vehicle && { ...vehicle, standsAlone: !drawn },
  };
}

/** The guides of the platform that act on a part of it, cut it or bolt through it, each with the place where that stands. */
function handledIn(
  part: string,
  platform: Platform,
  guides: readonly GuideSummary[],
  { root }: PageContext,
): readonly LinkView[] {
  return guides
    .filter((guide) => guide.platform === platform.id)
    .flatMap((guide) => {
      const place = guide.handled.includes(part) ? itemAnchor(part) : guide.worked[part];
      if (place === undefined) return [];
      return [{ text: guide.title, href: `${root}${guideFolder(guide)}index.html#${place}` }];
    });
}
