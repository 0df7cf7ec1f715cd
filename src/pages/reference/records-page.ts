import { markup } from '../../html/markup.ts';
import { frameOf, guideFolder, type PageContext } from '../frame/context.ts';
import type { GuideSummary } from './guide-summary.ts';
import type { RecordsView } from './reference-views.ts';

/** The page that opens the record of a vehicle: a saved file, or one that the device keeps. */
export function recordsPage(guides: readonly GuideSummary[], page: PageContext): RecordsView {
  const known = guides.map((guide) => ({
    id: guide.visit ? `visits/${guide.id}` : guide.id,
    text: guide.title,
    href: `${page.root}${guideFolder(guide)}index.html`,
    fingerprint: guide.fingerprint,
  }));
  return {
    frame: frameOf(page, {
      title: `Records, ${page.shop.settings.name}`,
      styles: [`${page.root}assets/vehicle.css`],
      scripts: ['vehicle-record.js'],
    }),
    guides: markup(JSON.stringify(known).replace(/</g, '\\u003c')),
  };
}
