import { plainText } from '../../html/prose.ts';
import { actionsOf, stepsOf } from '../../job/actions/walk.ts';
import { countWords, isFixing } from '../../job/index.ts';
import type { Guide } from '../../model/guide.ts';
import type { Fastener, Item, KitItem } from '../../model/item.ts';
import type { Job } from '../../model/job.ts';
import type { Shop } from '../../model/shop.ts';
import { glossary, isTermOf } from '../../trade/glossary/glossary.ts';
import type { SignalWord } from '../../trade/signal-words.ts';
import { formatBoth, formatQuantity, quantityOf } from '../../units/format.ts';
import type { Millimetres } from '../../units/quantity.ts';
import { numberSteps } from '../frame/context.ts';
import { itemAnchor } from '../frame/mention.ts';
import { typeOfItem } from '../frame/type-of-item.ts';
import { shapeOfItem } from '../overview/fastener-shape.ts';
import { fixingWords } from '../overview/gather.ts';
import { placesOfStep } from '../overview/vehicle.ts';
import { type Card, type FoldedCards, foldCards } from '../rehearsal/cards.ts';
import type { PictureView } from '../steps/block-views.ts';
import { expectedWords } from '../steps/readings.ts';

/**
 * What every page but the guide's own needs of a guide, and what links to it are held against: plain data, small
 * enough that a run can hold thousands.
 */
export interface GuideSummary {
  readonly id: string;
  /** The guide's file, from the workspace's root. */
  readonly file: string;
  readonly title: string;
  /** Id of its platform. */
  readonly platform: string;
  readonly partNumber: string | null;
  readonly revision: string | null;
  readonly fingerprint: string;
  /** Ids of the guides that it is planned from; `null` for a guide of an author. */
  readonly visit: readonly string[] | null;
  /** As written: `2026-10-02`. */
  readonly updated: string | null;
  /** By which lists show it, with an address from the site's root; `null` where it has none of its own. */
  readonly picture: PictureView | null;
  /** Hands-on minutes over all its builds. */
  readonly time: { readonly least: number; readonly most: number };
  /** The most who work on one step. */
  readonly people: number;
  /** Names of the options and choices by which the guide differs; empty where it reads alike for every build. */
  readonly differsWith: readonly string[];
  /** Sections, then the steps that some build carries out, each in the order of the page. */
  readonly places: readonly GuidePlace[];
  /** Ids of the steps that use each thing of the crib that the guide gathers. */
  readonly tools: { readonly [id: string]: readonly string[] };
  /** Its fasteners, of the vehicle and from the box. */
  readonly fasteners: readonly FastenerUse[];
  /** Where the messages of each signal word stand: ids of places. */
  readonly messages: { readonly [word in SignalWord]?: readonly string[] };
  /** The parts of its platform that some action of it names. */
  readonly handled: readonly string[];
  /** The parts of its platform that it cuts or bolts through, each with the place of a template or of the bolt. */
  readonly worked: { readonly [part: string]: string };
  /** Ids of the steps that are done in each place of its platform's drawing: a zone, `whole` or `off`. */
  readonly zones: { readonly [place: string]: readonly string[] };
  /** Every name by which a link can lead to a place of the page. */
  readonly anchors: readonly string[];
  /** "Not verified since step 7 changed"; `null` where it was never released, or its work is what was. */
  readonly unverified: string | null;
  /** What it is found by besides its title. */
  readonly facts: readonly GuideFact[];
  /** Its card set, which its platform's page may show with that of others. */
  readonly cards: FoldedCards;
}

/** A section or a step, as other pages name it. */
interface GuidePlace {
  readonly id: string;
  readonly text: string;
  /** The step's number on the page on which all builds stand; `null` for a section. */
  readonly number: number | null;
}

/** A fastener of a guide, with the steps that handle it. */
export interface FastenerUse {
  /** "Arch screw, 7 mm hexagon". */
  readonly name: string;
  /** "2 (1 each side)". */
  readonly count: string;
  /** Id of its type in the shop's list. */
  readonly type: string | null;
  /** Ids of the glossary's terms for its drive and its shape. */
  readonly terms: readonly string[];
  readonly steps: readonly string[];
}

/** A line by which a guide is found, and the place on its page where it stands. */
interface GuideFact {
  readonly text: string;
  readonly at: string | null;
}

/**
 * Sums a guide up for the rest of the site.
 *
 * @param cards its card set
 * @param picture by which lists show it
 * @param unverified how it stands to its latest release, in short, where its work is no longer what was verified
 */
export function summaryOf(
  guide: Guide,
  job: Job,
  shop: Pick<Shop, 'crib' | 'fastenerTypes' | 'platforms'>,
  cards: readonly Card[],
  picture: PictureView | null,
  unverified: string | null = null,
): GuideSummary {
  return {
    id: guide.id,
    file: guide.file,
    title: guide.title.value,
    visit: guide.visit?.guides.map(({ id }) => id) ?? null,
    platform: guide.platform.value,
    picture,
    partNumber: guide.partNumber?.value ?? null,
    revision: guide.revision?.value ?? null,
    fingerprint: job.fingerprint,
    updated: guide.updated?.value ?? null,
    time: {
      least: Math.min(...job.plans.map(({ time }) => time.job.least)),
      most: Math.max(...job.plans.map(({ time }) => time.job.most)),
    },
    people: Math.max(1, ...job.plans.flatMap((plan) => plan.steps.map((step) => step.people))),
    differsWith: differences(guide, job),
    places: placesOf(guide, job),
    tools: toolUses(guide, job, shop),
    fasteners: fastenerUses(guide, shop),
    messages: messagePlaces(job),
    handled: handledParts(guide, shop),
    worked: workedParts(guide, shop),
    zones: stepsByPlace(guide, job),
    anchors: [...guide.anchors],
    unverified,
    facts: factsOf(guide, job),
    cards: foldCards(cards),
  };
}

function differences({ builds, items }: Guide, job: Job): readonly string[] {
  if (job.plans.length < 2) return [];
  const deciding = builds.options.filter(
    ({ id }) => job.decidingOptions.includes(id) && items.get(id)?.kind !== 'inspection',
  );
  return deciding.flatMap(({ name, choices }) => choices?.map((choice) => choice.name) ?? [name]);
}

function placesOf(guide: Guide, job: Job): readonly GuidePlace[] {
  return [
    ...guide.sections.map(({ id, titleText }) => ({ id, text: titleText, number: null })),
    ...[...numberSteps(guide, job).values()].map(({ step, number }) => ({
      id: step.id,
      text: step.titleText,
      number,
    })),
  ];
}

function toolUses({ items }: Guide, job: Job, { crib }: Pick<Shop, 'crib'>): GuideSummary['tools'] {
  const uses = new Map<string, Set<string>>();
  for (const id of items.keys()) if (crib.has(id)) uses.set(id, new Set());
  for (const step of job.plans.flatMap((plan) => plan.steps)) {
    for (const item of [...step.tools, ...step.wear]) uses.get(item)?.add(step.id);
  }
  return Object.fromEntries([...uses].map(([id, steps]) => [id, [...steps]]));
}

function fastenerUses(guide: Guide, shop: Pick<Shop, 'fastenerTypes'>): readonly FastenerUse[] {
  const steps = new Map<string, Set<string>>();
  // A job lists the fasteners that are turned; what is done to any, a rivet nut too, stands in the steps.
  for (const step of stepsOf(guide)) {
    for (const { node } of actionsOf(step)) {
      const id = node.target.value;
      steps.set(id, (steps.get(id) ?? new Set<string>()).add(step.id));
    }
  }
  return [...guide.items.values()].flatMap((item) => {
    if (item.kind !== 'fastener' && item.kind !== 'kit') return [];
    const type = typeOfItem(item, shop);
    if (type === null && !isFixing(item)) return [];
    return {
      name: itemWords(item),
      count: countWords(item),
      type: type?.id ?? null,
      terms: termsOf(item, shop),
      steps: [...(steps.get(item.id) ?? [])],
    };
  });
}

/** The terms of a fastener's drive, its own or that of its type, and of its shape. */
function termsOf(item: Fastener | KitItem, shop: Pick<Shop, 'fastenerTypes'>): readonly string[] {
  const shape = shapeOfItem(item, shop);
  const isTerm = (term: (typeof glossary)[number]) =>
    term.kind === 'fastener' ? term.shape === shape : item.drive !== null && isTermOf(term, item.drive.value);
  return glossary.filter(isTerm).map(({ id }) => id);
}

function messagePlaces(job: Job): GuideSummary['messages'] {
  const places = new Map<SignalWord, Set<string>>();
  for (const { message, step, section } of job.plans.flatMap((plan) => plan.messages)) {
    const own = places.get(message.word) ?? new Set<string>();
    places.set(message.word, own.add(step ?? section));
  }
  return Object.fromEntries([...places].map(([word, ids]) => [word, [...ids]]));
}

function handledParts(guide: Guide, { platforms }: Pick<Shop, 'platforms'>): readonly string[] {
  const parts = platforms.get(guide.platform.value)?.parts;
  const targets = stepsOf(guide).flatMap((step) => actionsOf(step).map(({ node }) => node.target.value));
  return [...new Set(targets.filter((id) => parts?.has(id)))];
}

function workedParts(guide: Guide, { platforms }: Pick<Shop, 'platforms'>): GuideSummary['worked'] {
  const parts = platforms.get(guide.platform.value)?.parts;
  const cuts = [...guide.templates.values()].flatMap(({ id, panel }) =>
    panel ? [[panel.value, id] as const] : [],
  );
  const bolted = [...guide.items.values()].flatMap((item) =>
    isFixing(item) ? item.stack.map(({ value }) => [value, itemAnchor(item.id)] as const) : [],
  );
  return Object.fromEntries([...bolted, ...cuts].filter(([part]) => parts?.has(part)));
}

function stepsByPlace(guide: Guide, job: Job): GuideSummary['zones'] {
  const places = new Map<string, string[]>();
  if (guide.zones.size === 0) return {};
  for (const { step } of numberSteps(guide, job).values()) {
    for (const place of placesOfStep(guide, step)) places.set(place, [...(places.get(place) ?? []), step.id]);
  }
  return Object.fromEntries(places);
}

function factsOf(guide: Guide, job: Job): readonly GuideFact[] {
  const done = new Set(job.plans.flatMap((plan) => plan.steps.map((step) => step.id)));
  const steps = stepsOf(guide).filter((step) => done.has(step.id));
  const tightened = new Map(
    job.plans.flatMap((plan) =>
      plan.fasteners.map((line) => [line.item, line.tightenedIn ?? line.putIn ?? line.removedIn] as const),
    ),
  );
  return once([
    ...[...guide.items.values()].map((item) => ({
      text: itemWords(item),
      at: tightened.get(item.id) ?? null,
    })),
    ...[...guide.templates.values()].flatMap((template) => [
      { text: template.title, at: template.id },
      ...[...template.holes, ...template.patterns].map((hole) => ({
        text: holeWords(hole),
        at: hole.id === null ? template.id : itemAnchor(hole.id),
      })),
    ]),
    ...steps.map((step) => ({ text: step.titleText, at: step.id })),
    ...job.plans
      .flatMap((plan) => plan.messages)
      .map(({ message, step, section }) => ({
        text: `${message.word.toUpperCase()}: ${plainText(message.hazard, () => '')}`,
        at: step ?? section,
      })),
  ]);
}

/** Each line once, where it first stands: plans repeat their messages, and so do sections. */
function once(facts: readonly GuideFact[]): readonly GuideFact[] {
  const first = new Map<string, GuideFact>();
  for (const fact of facts) if (!first.has(fact.text)) first.set(fact.text, fact);
  return [...first.values()];
}

/** An item in a line, with every size and torque that it has: "Arch screw, 7 mm hexagon". */
function itemWords(item: Item): string {
  const details = detailsOf(item).filter((detail) => detail);
  return details.length > 0 ? `${item.noun.label}, ${details.join(', ')}` : item.noun.label;
}

function detailsOf(item: Item): readonly (string | null)[] {
  if (isFixing(item)) return [fixingWords(item)];
  switch (item.kind) {
    case 'rating':
      return [item.limit, item.claim].map((limit) => (limit ? formatBoth(limit.value) : null));
    case 'circuit':
      return [item.load, item.fuse, item.voltage].map((part) => (part ? formatQuantity(part.value) : null));
    case 'measure':
      return [expectedWords(item)];
    case 'setting':
      return [item.to.value];
    default:
      return [];
  }
}

/** "Inner hole, 19 mm": what a bit or a hole saw is looked up for. */
function holeWords({ label, diameter }: { readonly label: string; readonly diameter: Millimetres }): string {
  return `${label}, ${formatQuantity(quantityOf('length', diameter, 'mm'))}`;
}
