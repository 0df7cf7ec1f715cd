import type { SignalWord } from '../../trade/signal-words.ts';
import { guideFolder, type PageContext } from '../frame/context.ts';
import type { FastenerUse, GuideSummary } from './guide-summary.ts';
import type { UsedInView } from './reference-views.ts';

/** Guides by title, as the pages of what they use list them. */
export function byTitle(guides: readonly GuideSummary[]): readonly GuideSummary[] {
  return [...guides].sort((a, b) => (a.title < b.title ? -1 : a.title > b.title ? 1 : 0));
}

/** The guides that use something, those of them that a page lists, and how many more there are. */
export interface WhereUsed {
  readonly uses: readonly UsedInView[];
  readonly unlisted: number;
}

/**
 * More than anybody reads through; the search tells them apart. The glossary has such a list for each term: with those
 * of all of four thousand guides it would weigh more than a browser shows.
 */
const MOST_LISTED = 200;

/** Where a guide uses something: ids of its places, and its items in words. */
interface Use {
  readonly items: readonly string[];
  readonly places: readonly string[];
}

/** Every guide that gathers a tool or protective equipment of the crib, with the steps that the jobs name for it. */
export function usesOfTool(id: string, guides: readonly GuideSummary[], page: PageContext): WhereUsed {
  return usedIn(guides, page, ({ tools }) => {
    const steps = tools[id];
    return steps ? { items: [], places: steps } : null;
  });
}

/** Every guide with such fasteners, of the vehicle or from the box, with what is done to them in the jobs. */
export function usesOfFasteners(
  matches: (fastener: FastenerUse) => boolean,
  guides: readonly GuideSummary[],
  page: PageContext,
): WhereUsed {
  return usedIn(guides, page, ({ fasteners }) => {
    const own = fasteners.filter(matches);
    if (own.length === 0) return null;
    return {
      items: own.map(({ name, count }) => `${name}: ${count}`),
      places: own.flatMap(({ steps }) => steps),
    };
  });
}

/** Every guide with safety messages under a word, with the steps and sections that they stand in. */
export function usesOfSignalWord(
  word: SignalWord,
  guides: readonly GuideSummary[],
  page: PageContext,
): WhereUsed {
  return usedIn(guides, page, ({ messages }) => {
    const places = messages[word];
    return places ? { items: [], places } : null;
  });
}

function usedIn(
  guides: readonly GuideSummary[],
  { shop, root }: PageContext,
  useIn: (guide: GuideSummary) => Use | null,
): WhereUsed {
  const users = guides.flatMap((guide) => {
    const use = useIn(guide);
    return use ? [{ guide, use }] : [];
  });
  const uses = users.slice(0, MOST_LISTED).map(({ guide, use }) => {
    const href = `${root}${guideFolder(guide)}index.html`;
    const used = new Set(use.places);
    return {
      guide: { text: guide.title, href },
      platform: shop.platforms.get(guide.platform)?.title.value ?? guide.platform,
      items: use.items,
      places: guide.places
        .filter(({ id }) => used.has(id))
        .map(({ id, text, number }) => ({ text, number, href: `${href}#${id}` })),
    };
  });
  return { uses, unlisted: users.length - uses.length };
}
