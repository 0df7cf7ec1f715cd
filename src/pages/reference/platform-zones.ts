import type { Platform } from '../../model/shop.ts';
import { guideFolder, type PageContext } from '../frame/context.ts';
import type { GuideInZone, PlatformZones } from '../overview/overview-views.ts';
import { drawnZone, placeAnchor, withLinks, zonedDrawing } from '../overview/vehicle.ts';
import type { GuideSummary } from './guide-summary.ts';
import { byTitle } from './where-used.ts';

/**
 * The drawing of a platform with its zones, and what lies in each: the parts that the platform declares there, and
 * the steps of its guides. `null` for a platform without zones. A zone in which nothing lies is named too.
 */
export function platformZones(
  platform: Platform,
  guides: readonly GuideSummary[],
  page: PageContext,
): PlatformZones | null {
  const drawing = zonedDrawing({ zones: platform.zones, platform: { value: platform.id } }, page);
  if (!drawing) return null;
  const own = byTitle(guides.filter((guide) => guide.platform === platform.id));
  const zones = [...platform.zones.keys(), 'whole', 'off'].map((place) => ({
    ...drawnZone(place, platform, drawing),
    parts: [...platform.parts.values()]
      .filter((part) => part.zones.some(({ value }) => value === place))
      .map(({ noun }) => noun.label),
    guides: own.flatMap((guide) => stepsIn(place, guide, page)),
  }));
  const isNamed = (index: number) => index < platform.zones.size;
  return withLinks(
    drawing,
    zones.filter((zone, index) => isNamed(index) || zone.guides.length > 0),
  );
}

/** The steps of a guide in a place, on the guide's page; none for a guide that does nothing there. */
function stepsIn(place: string, guide: GuideSummary, { root }: PageContext): readonly GuideInZone[] {
  const here = new Set(guide.zones[place] ?? []);
  if (here.size === 0) return [];
  const href = `${root}${guideFolder(guide)}index.html`;
  return [
    {
      guide: { text: guide.title, href: `${href}#${placeAnchor(place)}` },
      steps: guide.places.flatMap(({ id, text, number }) =>
        number !== null && here.has(id) ? [{ number, title: text, href: `${href}#${id}` }] : [],
      ),
    },
  ];
}
