import { isIn } from '../../job/actions/uses.ts';
import { actionsOf } from '../../job/actions/walk.ts';
import { allHold } from '../../job/builds/when.ts';
import {
  capitalised,
  countWords,
  handledCount,
  handledEach,
  isFixing,
  itemTorqueWords,
  listed,
  lowered,
  stepsOf,
} from '../../job/index.ts';
import type { Guide } from '../../model/guide.ts';
import type { Action, Verb } from '../../model/inline.ts';
import type { Item } from '../../model/item.ts';
import type { BagLine, FastenerLine, Job, Plan } from '../../model/job.ts';
import type { Shop } from '../../model/shop.ts';
import type { Drive } from '../../trade/drives.ts';
import type { FastenerShape } from '../../trade/glossary/glossary.ts';
import { orderWords, tighteningOrder } from '../../trade/pattern.ts';
import { sharedRows } from '../frame/plans.ts';
import { shapeOfItem } from '../overview/fastener-shape.ts';
import { setName, tellsSide, toolSet } from './questions.ts';

/** What a card is about. */
export type CardKind = 'fastener' | 'apart' | 'torque' | 'side' | 'once' | 'bag';

/** A question for a break, with its one answer, both from what the guide states: plain data. */
export interface Card {
  readonly about: CardKind;
  readonly ask: string;
  readonly answer: string;
  /** The builds for which the answer holds, in words; `null` where it holds for all. */
  readonly only: string | null;
  /** The step that shows it. */
  readonly at: string;
  /** What the fastener in question looks like, as far as the guide tells; `null` where there is nothing to see. */
  readonly looks: { readonly shape: FastenerShape | null; readonly drive: Drive | null } | null;
}

/** The cards of a guide as a run holds them for thousands of guides: as JSON they take a fifth of the memory. */
export interface FoldedCards {
  readonly count: number;
  readonly json: string;
}

/** Folds cards for keeping. */
export function foldCards(cards: readonly Card[]): FoldedCards {
  return { count: cards.length, json: JSON.stringify(cards) };
}

/** The cards that were folded. */
export function unfoldCards({ json }: FoldedCards): readonly Card[] {
  return JSON.parse(json);
}

type BareCard = Omit<Card, 'only'>;

/** An action that a build does, and its step. */
interface Done {
  readonly action: Action;
  readonly step: string;
}

/** What the cards of one build are made from. */
interface Ground {
  readonly guide: Guide;
  readonly shop: Pick<Shop, 'fastenerTypes'>;
  readonly plan: Plan;
  /** The items that the build has. */
  readonly items: readonly Item[];
  /** Those of them that hold a thing, are plugged in on it or lie over it, by the id of that thing. */
  readonly around: ReadonlyMap<string, readonly Item[]>;
  readonly done: readonly Done[];
}

/**
 * The card set of a guide: what a fastener is and what turns it, what is out before a part comes off, how tight, on
 * which side, what serves once, in which bag. Of cards that ask the same in the same builds and cannot be told apart,
 * none is kept: each has one right answer.
 */
export function cardsOf(guide: Guide, job: Job, shop: Pick<Shop, 'fastenerTypes'>): readonly Card[] {
  const rows = sharedRows({ guide, job }, (plan) => soundCards(groundOf(guide, plan, shop)));
  return rows.map(({ row, shown }) => ({ ...row, only: shown.only }));
}

function groundOf(guide: Guide, plan: Plan, shop: Pick<Shop, 'fastenerTypes'>): Ground {
  const [build = {}] = plan.builds;
  const inPlan = new Set(plan.steps.map(({ id }) => id));
  const items = [...guide.items.values()].filter((item) => isIn(item, build));
  return {
    guide,
    shop,
    plan,
    items,
    around: aroundEach(items),
    done: stepsOf(guide)
      .filter(({ id }) => inPlan.has(id))
      .flatMap((step) =>
        actionsOf(step).flatMap(({ node, whens }) =>
          allHold(whens, build) ? [{ action: node, step: step.id }] : [],
        ),
      ),
  };
}

function aroundEach(items: readonly Item[]): ReadonlyMap<string, readonly Item[]> {
  const around = new Map<string, Item[]>();
  for (const item of items) {
    const refs = [
      ...(isFixing(item) ? item.holds : []),
      ...(item.kind === 'connector' ? item.on : []),
      ...('covers' in item ? item.covers : []),
    ];
    for (const id of new Set(refs.map(({ value }) => value))) {
      const beside = around.get(id);
      if (beside) beside.push(item);
      else around.set(id, [item]);
    }
  }
  return around;
}

function soundCards(ground: Ground): readonly BareCard[] {
  const { plan } = ground;
  const cards = [
    ...plan.fasteners.flatMap((line) => fastenerCard(line, ground)),
    ...ground.items.flatMap((item) => apartCard(item, ground)),
    ...plan.fasteners.flatMap((line) => torqueCard(line, ground)),
    ...ground.items.flatMap((item) => sideCard(item, ground)),
    ...onceCard(ground),
    ...plan.bags.flatMap(({ number, step, contents }) =>
      contents.flatMap((line) => bagCard(line, number, step, ground)),
    ),
  ];
  const asked = cards.map(({ ask, looks }) => JSON.stringify([ask, looks]));
  const times = new Map<string, number>();
  for (const question of asked) times.set(question, (times.get(question) ?? 0) + 1);
  return cards.filter((_, index) => times.get(asked[index] ?? '') === 1);
}

const turning: ReadonlySet<Verb> = new Set<Verb>(['remove', 'loosen', 'tighten', 'start', 'fit', 'refit']);

/** What is seen of a fastener, and what it holds: what is it, and what turns it? */
function fastenerCard({ item: id, from }: FastenerLine, ground: Ground): readonly BareCard[] {
  const { guide, shop, done } = ground;
  const item = guide.items.get(id);
  if (!item || !isFixing(item) || item.holds.length === 0) return [];
  const shape = shapeOfItem(item, shop);
  const drive = item.drive?.value ?? null;
  if (shape === null && drive === null) return [];
  const turned = done.find(
    ({ action }) =>
      action.target.value === id && turning.has(action.verb) && toolSet(action, item, guide).length > 0,
  );
  if (!turned) return [];
  const held = listed(namesOf(item.holds, ground).map((name) => `the ${name}`));
  const isOne = handledCount(item) === 1;
  const which = isOne ? 'This holds' : `${countOf(item)} hold`;
  const whence = from === 'box' ? ` ${isOne ? 'It comes' : 'They come'} in the box.` : '';
  const asked = isOne
    ? 'What is it, and which tool does it take?'
    : 'What are they, and which tool do they take?';
  return [
    {
      about: 'fastener',
      ask: `${which} ${held}.${whence} ${asked}`,
      answer: `${item.noun.label}: ${lowered(setName(toolSet(turned.action, item, guide)))}`,
      at: turned.step,
      looks: { shape, drive },
    },
  ];
}

/** "6 of these", "6 of these, 3 each side,": within a sentence. */
function countOf(item: Item): string {
  const [total, each] = countWords(item).split(/ \(|\)/);
  return `${total} of these${each ? `, ${each},` : ''}`;
}

function namesOf(refs: readonly { readonly value: string }[], { items }: Ground): readonly string[] {
  const named = new Set(refs.map(({ value }) => value));
  return items.filter(({ id }) => named.has(id)).map(({ noun }) => noun.singular);
}

/** What holds a part, is plugged in on it or lies over it, and is undone in this build. */
function apartCard(item: Item, { around, done }: Ground): readonly BareCard[] {
  const items = around.get(item.id);
  if (item.kind !== 'part' || !items) return [];
  const lifted = done.find(({ action }) => action.target.value === item.id && action.verb === 'remove');
  if (!lifted) return [];
  const before = done.slice(0, done.indexOf(lifted));
  const undone = (one: Item, ...verbs: readonly Verb[]) =>
    before.some(({ action }) => action.target.value === one.id && verbs.includes(action.verb));
  const names = (refs: readonly { readonly value: string }[]) => refs.some(({ value }) => value === item.id);
  const lines = [
    [
      'out',
      items.filter(
        (one) => isFixing(one) && names(one.holds) && !one.freeWhenLoosened && undone(one, 'remove'),
      ),
    ],
    [
      'loosened',
      items.filter(
        (one) => isFixing(one) && names(one.holds) && one.freeWhenLoosened && undone(one, 'loosen'),
      ),
    ],
    [
      'unplugged',
      items.filter((one) => one.kind === 'connector' && names(one.on) && undone(one, 'disconnect')),
    ],
    ['off', items.filter((one) => 'covers' in one && names(one.covers) && undone(one, 'remove'))],
    ['aside', items.filter((one) => 'covers' in one && names(one.covers) && undone(one, 'move-aside'))],
  ] as const;
  const told = lines.filter(([, list]) => list.length > 0);
  if (told.length === 0) return [];
  return [
    {
      about: 'apart',
      ask: `${item.noun.label}: what is undone before it comes off?`,
      answer: told
        .map(([how, list]) => `${capitalised(how)}: ${list.map(countedWords).join(', ')}`)
        .join('. '),
      at: lifted.step,
      looks: null,
    },
  ];
}

/** "6 side screws (3 each side)", "old clip", "lamp plug (1 each side)". */
function countedWords(item: Item): string {
  const count = countWords(item);
  if (count === '1') return item.noun.singular;
  const [total, ...each] = count.split(' ');
  return [total, item.noun.plural, ...each].join(' ');
}

/** "Bar bolt, 4"; a single one is not counted. */
function labelAndCount(label: string, count: number, words = String(count)): string {
  return count === 1 ? label : `${label}, ${words}`;
}

function torqueCard({ item: id, tightenedIn, putIn }: FastenerLine, ground: Ground): readonly BareCard[] {
  const { guide, done } = ground;
  const item = guide.items.get(id);
  const step = tightenedIn ?? putIn;
  if (!item || !isFixing(item) || step === null) return [];
  const torque = itemTorqueWords(item);
  if (torque === '') return [];
  const order = item.pattern && tighteningOrder(handledEach(item), item.pattern.value);
  const coat = item.coat ? guide.items.get(item.coat.value)?.noun.singular : undefined;
  const tightened = done.find(({ action }) => action.target.value === id && action.verb === 'tighten');
  const tools = tightened ? toolSet(tightened.action, item, guide) : [];
  const parts = [
    torque,
    order && item.pattern ? orderWords(order, item.pattern.value) : null,
    item.leftHand ? 'anticlockwise: a left-hand thread' : null,
    coat ? `with ${coat} on the thread` : null,
    tools.length > 0 ? lowered(setName(tools)) : null,
  ].filter((part) => part !== null);
  return [
    {
      about: 'torque',
      ask: `${labelAndCount(item.noun.label, handledCount(item), countWords(item))}: how tight?`,
      answer: parts.join('; '),
      at: step,
      looks: null,
    },
  ];
}

function sideCard(item: Item, { guide, done }: Ground): readonly BareCard[] {
  const side = 'side' in item ? (item.side?.value ?? null) : null;
  if (side === null || side === 'each' || tellsSide(item.noun.label, guide)) return [];
  const first = done.find(({ action }) => action.target.value === item.id);
  if (!first) return [];
  return [
    {
      about: 'side',
      ask: `${item.noun.label}: on which side?`,
      answer: `On the ${guide.words[side]}`,
      at: first.step,
      looks: null,
    },
  ];
}

/** One card for all that serves once: of a single thing nobody would ask. */
function onceCard({ items, done }: Ground): readonly BareCard[] {
  const spent = items.flatMap((item) => {
    if (item.kind !== 'fastener' || item.reuse) return [];
    const out = done.find(({ action }) => action.target.value === item.id && action.verb === 'remove');
    return out ? [{ item, step: out.step }] : [];
  });
  const [first] = spent;
  if (!first) return [];
  const lines = spent.map(({ item }) => {
    const next = items.filter((one) => 'replaces' in one && one.replaces?.value === item.id);
    const instead = next.length > 0 ? listed(next.map(countedWords)) : 'a new one';
    return `${countedWords(item)}: ${instead}`;
  });
  return [
    {
      about: 'once',
      ask: 'What serves only once here, and what goes in its place?',
      answer: capitalised(lines.join('. ')),
      at: first.step,
      looks: null,
    },
  ];
}

function bagCard(line: BagLine, number: number, step: string, { guide }: Ground): readonly BareCard[] {
  const item = guide.items.get(line.item);
  // What goes back in before the step is done stays in the hand.
  if (!item || line.backIn === step) return [];
  const titles = new Map(stepsOf(guide).map(({ id, titleText }) => [id, titleText]));
  const out = titles.get(step) ?? step;
  const back = line.backIn === null ? `${line.end === 'off' ? 'not put back' : line.end}` : null;
  const whither = back ?? `back in with “${titles.get(line.backIn ?? '') ?? line.backIn}”`;
  return [
    {
      about: 'bag',
      ask: `${labelAndCount(item.noun.label, line.count)}, off in “${out}”: in which bag, and what becomes of ${line.count === 1 ? 'it' : 'them'}?`,
      answer: `Bag ${number}; ${whither}`,
      at: step,
      looks: null,
    },
  ];
}
