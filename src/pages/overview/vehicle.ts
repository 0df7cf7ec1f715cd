import { zonesOfStep, zonesOfThing } from '../../job/index.ts';
import { capitalised } from '../../job/words/noun.ts';
import type { PictureBox } from '../../model/block.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Item } from '../../model/item.ts';
import type { TradeWords } from '../../trade/words.ts';
import { type GuideContext, type PageContext, shownStep, stepRef } from '../frame/context.ts';
import { itemAnchor } from '../frame/mention.ts';
import { shownWhen } from '../frame/plans.ts';
import type { Shown, StepRef } from '../frame/shared-views.ts';
import type { PictureView } from '../steps/block-views.ts';

/** A drawing of a vehicle with its zones. */
export interface VehicleDrawing<Z extends DrawnZone> {
  readonly picture: PictureView;
  readonly alt: string;
  /** In the order of the platform, then the whole vehicle, then what is done off it. */
  readonly zones: readonly Z[];
  /** Those that the drawing leads to, the largest below the others. */
  readonly links: readonly ZoneLink[];
}

/** The drawing of the vehicle, and what the job has in each of its zones. */
export type VehicleView = VehicleDrawing<ZoneView>;

/** A zone as it is touched in the drawing. */
interface ZoneLink {
  readonly href: string;
  readonly name: string;
  /** Id of its shape. */
  readonly lit: string;
  /** The room that a finger is given. */
  readonly touch: Box;
}

/** A zone of the drawing. */
export interface DrawnZone {
  /** Where its list stands on the page. */
  readonly id: string;
  /** Its shape in the drawing, for steps to light up; `null` for work that is off it. */
  readonly lit: LitShape | null;
  readonly name: string;
}

/** A zone with what is done in it. */
interface ZoneView extends DrawnZone {
  readonly steps: readonly StepRef[];
  readonly parts: readonly ThingRef[];
  readonly plugs: readonly ThingRef[];
}

/** The shape of a zone. */
interface LitShape {
  readonly id: string;
  readonly box: Box;
}

/** A box in the units of the picture. */
interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A part or a plug, with its row on the page. */
interface ThingRef extends Shown {
  readonly text: string;
  readonly href: string;
}

/** The zone of a step that has none of its own. */
type Place = string | 'whole' | 'off';

/** A drawing with zones, as a page can show it; `null` for a platform without. */
export interface ZonedDrawing {
  readonly picture: PictureView;
  readonly alt: string;
  readonly box: (zone: PictureBox) => Box;
}

/**
 * The platform's drawing, where it has zones and can be shown.
 *
 * @param page what the page is made from
 */
export function zonedDrawing(
  { zones, platform }: Pick<Guide, 'zones'> & { readonly platform: { readonly value: string } },
  page: PageContext,
): ZonedDrawing | null {
  const drawing = zones.size === 0 ? null : page.shop.platforms.get(platform.value)?.drawing;
  const picture = drawing?.path ? page.shelf.picture(drawing.path, drawing.figure) : null;
  if (!drawing || !picture) return null;
  const { width, height } = picture;
  // Zones are fractions of the uncropped picture; the one at hand may be cropped.
  const crop = drawing.figure?.crop?.value ?? { left: 0, top: 0, width: 1, height: 1 };
  const box = (zone: PictureBox) => ({
    x: rounded(((zone.left - crop.left) / crop.width) * width),
    y: rounded(((zone.top - crop.top) / crop.height) * height),
    width: rounded((zone.width / crop.width) * width),
    height: rounded((zone.height / crop.height) * height),
  });
  return { picture, alt: drawing.alt?.value ?? '', box };
}

/** Everything that a guide does, by the zones of its platform's drawing; `null` where there is none. */
export function vehicleView(guide: Guide, context: GuideContext): VehicleView | null {
  const { drawing } = context;
  if (!drawing) return null;
  const things = [...guide.items.values()]
    .filter((item) => context.listed.has(item.id))
    .map((item) => ({ item, zones: zonesOfThing(guide, item.id) }));
  const steps = [...context.steps.values()].map((numbered) => ({
    numbered,
    places: placesOfStep(guide, numbered.step),
  }));
  const zoneView = (place: Place): ZoneView => {
    const here = things.filter(({ zones }) => zones.includes(place));
    const refs = (kind: Item['kind']) =>
      here.filter(({ item }) => item.kind === kind).map(({ item }) => thingRef(item, context));
    return {
      ...drawnZone(place, guide, drawing),
      steps: steps.flatMap(({ numbered, places }) => {
        const ref = places.includes(place) ? stepRef(context, numbered.step.id) : null;
        return ref ? [{ ...ref, ...shownStep(context, numbered) }] : [];
      }),
      parts: refs('part'),
      plugs: refs('connector'),
    };
  };
  const zones = [...guide.zones.keys(), 'whole', 'off'].map(zoneView);
  return withLinks(
    drawing,
    zones.filter(({ steps, parts, plugs }) => steps.length + parts.length + plugs.length > 0),
  );
}

/** A place of the drawing: a zone by its id, the whole vehicle, or what is off it. */
export function drawnZone(
  place: Place,
  of: { readonly zones: Guide['zones']; readonly words: TradeWords },
  { picture, box }: ZonedDrawing,
): DrawnZone {
  const own = of.zones.get(place)?.box ?? null;
  const whole = { x: 0, y: 0, width: picture.width, height: picture.height };
  const shape = place === 'whole' ? whole : own && box(own);
  return {
    id: placeAnchor(place),
    lit: shape && { id: litId(place), box: shape },
    name: placeName(of, place),
  };
}

/** The drawing with what leads to each of its zones. */
export function withLinks<Z extends DrawnZone>(
  { picture, alt }: ZonedDrawing,
  zones: readonly Z[],
): VehicleDrawing<Z> {
  const largestFirst = zones.toSorted((a, b) => areaOf(b) - areaOf(a));
  const links = largestFirst.flatMap(({ id, lit, name }) =>
    lit ? [{ href: `#${id}`, name, lit: lit.id, touch: touchable(lit.box, picture) }] : [],
  );
  return { picture, alt, zones, links };
}

const areaOf = ({ lit }: DrawnZone) => (lit ? lit.box.width * lit.box.height : 0);

/** Where a step is done: zones, the whole vehicle, or off it. */
export function placesOfStep(
  guide: Pick<Guide, 'items' | 'templates' | 'zones'>,
  step: Step,
): readonly Place[] {
  const zones = zonesOfStep(guide, step);
  if (zones === 'off') return ['off'];
  return zones.length > 0 ? zones : ['whole'];
}

/** "Front end", "The whole van", "Off the van". */
export function placeName(
  { zones, words }: { readonly zones: Guide['zones']; readonly words: TradeWords },
  place: Place,
): string {
  if (place === 'whole') return `Whole ${words.vehicle}`;
  if (place === 'off') return `Off the ${words.vehicle}`;
  return zones.get(place)?.label ?? capitalised(place);
}

/** The underscore keeps the anchors apart from the ids that authors write. */
export function placeAnchor(place: Place): string {
  return `zone_${place}`;
}

/** The id of the shape that a step lights up. */
export function litId(place: Place): string {
  return `lit_${place}`;
}

function thingRef(item: Item, context: GuideContext): ThingRef {
  return { ...shownWhen(context, item.when), text: item.noun.label, href: `#${itemAnchor(item.id)}` };
}

/** A thumb in a glove hits 56 pixels on a phone that shows the drawing 358 pixels wide, whatever its shape. */
const FINGER = 60 / 358;

function touchable(box: Box, picture: { readonly width: number; readonly height: number }): Box {
  const least = picture.width * FINGER;
  const [x, width] = widened(box.x, box.width, least, picture.width);
  const [y, height] = widened(box.y, box.height, least, picture.height);
  return { x, y, width, height };
}

function widened(start: number, size: number, least: number, room: number): readonly [number, number] {
  if (size >= least) return [start, size];
  const moved = Math.min(Math.max(0, start - (least - size) / 2), Math.max(0, room - least));
  return [rounded(moved), rounded(Math.min(least, room))];
}

function rounded(value: number): number {
  return Math.round(value * 10) / 10;
}
