import { whereUsed } from '../job/index.ts';
import type { Item } from '../model/item.ts';
import type { GatherList, Job } from '../model/job.ts';
import type { Shop } from '../model/shop.ts';
import { packsFor } from '../trade/packs.ts';
import { convert, quantityOf } from '../units/format.ts';
import type { Quantity } from '../units/quantity.ts';
import type { PlannedVisit } from './plan-visit.ts';

/** What the counter and the cart fetch for all jobs of a day. Jobs are named by their places in it. */
export interface DayList {
  readonly jobs: readonly DayJob[];
  /** How many vehicles are worked on at once, at the most. */
  readonly atOnce: number;
  readonly boxes: readonly DayBox[];
  readonly supplies: readonly DaySupply[];
  readonly tools: readonly DayTool[];
  readonly wear: readonly DayLine[];
}

/** One vehicle of the day. */
interface DayJob {
  readonly title: string;
  /** What is known of its build, as written; empty where nothing is. */
  readonly build: string;
  /** Its builds differ in what they need, and it is not said which one comes: the most that any needs is listed. */
  readonly isOpen: boolean;
}

/** Something that is fetched, and for which jobs. */
export interface DayLine {
  readonly id: string;
  readonly name: string;
  readonly jobs: readonly number[];
}

/** The accessory of a guide, one for each job. */
interface DayBox extends DayLine {
  readonly partNumber: string | null;
  readonly revision: string | null;
}

/** A supply, summed over the jobs. */
export interface DaySupply extends DayLine {
  /** What each of its jobs takes; `null` where the guide does not say. */
  readonly parts: readonly (Quantity | null)[];
  /** `null` where it cannot be summed. */
  readonly sum: Quantity | null;
  readonly pack: Quantity | null;
  /** Whole packages for the sum. */
  readonly packs: number | null;
}

/** A tool. */
export interface DayTool extends DayLine {
  readonly atHand: number;
  /** How many its jobs want when as many of them are under way as the shop can work on. */
  readonly wanted: number;
  /** How many more there would have to be for that. */
  readonly short: number;
}

/** A job of the day that has been planned. */
export interface PlannedJob extends PlannedVisit {
  readonly title: string;
  readonly build: string;
}

/**
 * Sums up what the jobs of a day need. A thing is one with that of another job where both have it from the shop's
 * lists or from one line of a guide or procedure, never because they are alike.
 */
export function dayList(jobs: readonly PlannedJob[], shop: Shop): DayList {
  const needs = jobs.flatMap((one, job) => needsOf(one, job, shop));
  const byIdentity = new Map<string, Need[]>();
  for (const need of needs) byIdentity.set(need.identity, [...(byIdentity.get(need.identity) ?? []), need]);
  const grouped = [...byIdentity.values()];
  const lines = (kind: Item['kind']) =>
    grouped
      .flatMap((group) => {
        const [first] = group;
        return first?.item.kind === kind
          ? [{ first: first.item, group, line: lineOf(first.item, group) }]
          : [];
      })
      .sort((a, b) => (a.line.name < b.line.name ? -1 : 1));
  // One technician to a vehicle; a shop of one may still have a second vehicle that waits for a cure.
  const atOnce = Math.max(2, shop.settings.crew);
  return {
    atOnce,
    jobs: jobs.map(({ title, job, build }) => ({
      title,
      build,
      isOpen: new Set(job.plans.map((plan) => JSON.stringify(needsIn(plan.gather, job)))).size > 1,
    })),
    boxes: boxesOf(jobs),
    supplies: lines('supply').map(({ first, group, line }) => {
      const parts = group.map(({ amount }) => amount);
      const sum = sumOf(parts);
      const pack = first.kind === 'supply' ? (first.pack?.value ?? null) : null;
      return { ...line, parts, sum, pack, packs: sum && pack && packsFor(sum, pack) };
    }),
    tools: lines('tool').map(({ first, line }) => {
      const atHand = first.kind === 'tool' ? first.atHand : 1;
      const wanted = Math.min(line.jobs.length, atOnce);
      return { ...line, atHand, wanted, short: Math.max(0, wanted - atHand) };
    }),
    wear: lines('wear').map(({ line }) => line),
  };
}

/** A thing that a job needs. */
interface Need {
  readonly identity: string;
  readonly item: Item;
  readonly job: number;
  readonly amount: Quantity | null;
}

function lineOf(item: Item, group: readonly Need[]): DayLine {
  return { id: item.id, name: item.noun.label, jobs: group.map(({ job }) => job) };
}

function needsOf({ guide, job }: PlannedJob, place: number, shop: Shop): readonly Need[] {
  const amounts = new Map<string, Quantity | null>();
  for (const { gather } of job.plans) {
    for (const { id, amount } of needsIn(gather, job)) {
      const known = amounts.get(id);
      const isMore = !known || (amount !== null && amount.base > known.base);
      amounts.set(id, isMore ? amount : known);
    }
  }
  return [...amounts].flatMap(([id, amount]) => {
    const item = guide.items.get(id);
    return item ? [{ identity: identityOf(item, shop), item, job: place, amount }] : [];
  });
}

/** What a plan needs besides the boxes. */
function needsIn(
  gather: GatherList,
  job: Job,
): readonly { readonly id: string; readonly amount: Quantity | null }[] {
  return [
    ...whereUsed(gather.supplies, (list) => list.supplies, job).map(({ item, declared }) => ({
      id: item,
      amount: declared,
    })),
    ...whereUsed(gather.tools, (list) => list.tools, job).map(({ item }) => ({ id: item, amount: null })),
    ...gather.wear.map(({ item }) => ({ id: item, amount: null })),
  ];
}

function identityOf(item: Item, { crib, supplies }: Shop): string {
  const listed = crib.get(item.id) ?? supplies.get(item.id);
  if (listed && listed.kind === item.kind && listed.noun.label === item.noun.label) return `shop ${item.id}`;
  return `${item.at.file}#${item.at.start}`;
}

function boxesOf(jobs: readonly PlannedJob[]): readonly DayBox[] {
  const boxes = new Map<string, DayBox>();
  for (const [place, { guide }] of jobs.entries()) {
    for (const { id, title, partNumber, revision } of guide.visit?.guides ?? []) {
      const known = boxes.get(id);
      boxes.set(id, { id, name: title, partNumber, revision, jobs: [...(known?.jobs ?? []), place] });
    }
  }
  return [...boxes.values()];
}

/** The sum in the unit of the first; `null` where one is not known, or they are of different kinds. */
function sumOf(parts: readonly (Quantity | null)[]): Quantity | null {
  const known = parts.flatMap((part) => part ?? []);
  const [first] = known;
  if (!first || known.length < parts.length) return null;
  const { dimension, unit } = first;
  if (known.some((part) => part.dimension !== dimension)) return null;
  return quantityOf(
    dimension,
    known.reduce((sum, part) => sum + convert(part, unit), 0),
    unit,
  );
}
