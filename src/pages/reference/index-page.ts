import { frameOf, type PageContext, platformFolder } from '../frame/context.ts';
import type { IndexView } from '../overview/overview-views.ts';
import { guideEntry } from './guide-entry.ts';
import type { GuideSummary } from './guide-summary.ts';
import { findView, indexLists } from './index-lists.ts';

/** The first page: every platform with its guides, by title, the visits, then what else can be looked up; and the search. */
export function indexPage(
  guides: readonly GuideSummary[],
  visits: readonly GuideSummary[],
  page: PageContext,
): IndexView {
  const platforms = [...page.shop.platforms.values()].sort((a, b) => byText(a.title.value, b.title.value));
  return {
    frame: frameOf(page, {
      title: `Install guides, ${page.shop.settings.name}`,
      styles: ['assets/reference.css'],
      scripts: ['search-index.js', 'search.js'],
    }),
    find: findView(page),
    platforms: platforms.map((platform) => ({
      link: { text: platform.title.value, href: `${platformFolder(platform.id)}index.html` },
      guides: entriesOf(platform.id, guides, page),
    })),
    visits: [...visits].sort((a, b) => byText(a.title, b.title)).map((visit) => guideEntry(visit, page)),
    lists: indexLists(page),
  };
}

/** The guides of a platform, by title. */
export function entriesOf(platform: string, guides: readonly GuideSummary[], page: PageContext) {
  return guides
    .filter((guide) => guide.platform === platform)
    .sort((a, b) => byText(a.title, b.title))
    .map((guide) => guideEntry(guide, page));
}

function byText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
