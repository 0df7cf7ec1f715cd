import type { Guide } from '../../src/model/guide.ts';
import type { Job } from '../../src/model/job.ts';
import type { Shop } from '../../src/model/shop.ts';
import type { PageContext, Shelf } from '../../src/pages/frame/context.ts';
import { guidePage } from '../../src/pages/guide/guide-page.ts';
import { prepareLayouts } from '../../src/pages/layouts/layouts.ts';
import { type GuideSummary, summaryOf } from '../../src/pages/reference/guide-summary.ts';
import { indexPage } from '../../src/pages/reference/index-page.ts';
import { platformPage } from '../../src/pages/reference/platform-page.ts';
import { cardsOf } from '../../src/pages/rehearsal/cards.ts';
import { readTemplates } from '../../src/site/templates.ts';
import * as fixture from './fixture.ts';

/** A shelf with one picture for every path, and no templates drawn. */
export const shelf: Shelf = {
  picture: (path) => ({
    src: `../../pictures/${path.split('/').at(-1)}`,
    width: 640,
    height: 400,
    sources: [],
    detail: null,
  }),
  template: () => ({ drawings: [], files: [], printCheck: null }),
  link: (href) => (href.startsWith('https:') ? href : null),
  page: (path) => `../../${path}`,
};

/** What a page of a guide is made from. */
export function page(root = '../../', shop: Shop = fixture.shop): PageContext {
  return { shop, shelf, root };
}

const { layouts } = await readTemplates({ paths: [], read: () => null });
const render = prepareLayouts(layouts);

/** A view as the built-in layouts print it. */
export function renderView(layout: string, view: object): string {
  const rendered = render(layout, view);
  if (!rendered.ok) throw new Error(rendered.problem);
  return rendered.html;
}

/** The page of a guide as the built-in layouts print it. */
export function guideHtml(guide: Guide = fixture.guide, job: Job = fixture.job, shop = fixture.shop): string {
  return renderView('guide.liquid', guidePage(guide, job, page('../../', shop)));
}

function summary(guide: Guide): GuideSummary {
  const { job, shop } = fixture;
  return summaryOf(guide, job, shop, cardsOf(guide, job, shop), null);
}

/** The first page. */
export function indexHtml(guide: Guide = fixture.guide): string {
  return renderView('index.liquid', indexPage([summary(guide)], [], page('')));
}

/** The page of the platform. */
export function platformHtml(guide: Guide = fixture.guide): string {
  const [platform] = fixture.shop.platforms.values();
  if (!platform) throw new Error('the fixture has no platform');
  return renderView('platform.liquid', platformPage(platform, [summary(guide)], page()));
}
