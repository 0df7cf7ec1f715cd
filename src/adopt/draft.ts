import type { Shop } from '../model/shop.ts';
import { toolFinder } from './crib-names.ts';
import { Inventory } from './inventory.ts';
import { listsOf } from './lists.ts';
import type { Outline } from './outline.ts';
import { PictureFolder } from './picture-folder.ts';
import { SectionWriter } from './section-writer.ts';
import { frontOf, needLines, offLines } from './write-front.ts';

/** What a draft is made for. */
export interface DraftFor {
  readonly shop: Shop;
  /** Id of the platform. */
  readonly platform: string;
  /** The name of the old file, as the draft tells it. */
  readonly from: string;
  /** In the place of what the old guide is called. */
  readonly title: string | null;
}

/** A guide that was drafted from an old one. */
export interface AdoptedGuide {
  readonly title: string;
  readonly text: string;
  /** By their path from the folder of the guide. */
  readonly pictures: ReadonlyMap<string, Uint8Array>;
}

/**
 * Drafts a guide from an old one. Every sentence of it is in the draft: in a step or a declaration, in its own words
 * beside an action that says the same, or in a place that its author has to decide. No number is made up.
 */
export function draftOf(outline: Outline, given: DraftFor): AdoptedGuide {
  // What is tightened to what is often said after the thing was put in: what a first draft learns, the second knows.
  const first = drafted(outline, given, new Map());
  const torques = new Map(
    first.inventory.things.flatMap(({ id, attributes }) => {
      const torque = attributes.get('torque');
      return torque === undefined ? [] : [[id, torque] as const];
    }),
  );
  return drafted(outline, given, torques).draft;
}

function drafted(
  outline: Outline,
  { shop, platform, from, title }: DraftFor,
  torques: ReadonlyMap<string, string>,
): { readonly draft: AdoptedGuide; readonly inventory: Inventory } {
  const inventory = new Inventory(shop, platform, torques);
  const findTools = toolFinder(shop, [...new Set(torques.values())]);
  const pictures = new PictureFolder();
  const lists = listsOf(outline.sections, inventory, findTools);
  const writer = new SectionWriter({ inventory, findTools, hasKitList: lists.hasKitList }, pictures);
  const body = outline.sections.flatMap((section) => writer.section(section, lists.left(section)));
  const vehicle = shop.platforms.get(platform)?.title.value ?? '';
  const named = title ?? inItsCase(outline.title, vehicle);
  const text = [
    ...frontOf(named, platform, from),
    ...writer.intro,
    ...needLines(inventory, lists.decide),
    ...offLines(inventory),
    ...body,
  ];
  return { draft: { title: named, text: `${tidy(text).join('\n')}\n`, pictures: pictures.files }, inventory };
}

/** The vehicle in a title as it is called, where the old one had it in capitals or in small letters. */
function inItsCase(title: string, vehicle: string): string {
  const at = vehicle === '' ? -1 : title.toLowerCase().indexOf(vehicle.toLowerCase());
  return at < 0 ? title : title.slice(0, at) + vehicle + title.slice(at + vehicle.length);
}

/** Lines without two empty ones in a row, and none at the end. */
function tidy(lines: readonly string[]): readonly string[] {
  const kept = lines.filter((line, index) => line !== '' || (index > 0 && lines[index - 1] !== ''));
  return kept.at(-1) === '' ? kept.slice(0, -1) : kept;
}
