import type { Note } from '../../diagnostics/finding.ts';
import { actionRule, findTarget, handledEach, isFixing, targetNoun } from '../../job/index.ts';
import type { Guide } from '../../model/guide.ts';
import type { Verb } from '../../model/inline.ts';
import type { Item } from '../../model/item.ts';
import type { StateName, Violation } from '../../model/violation.ts';
import type { Span } from '../../source/span.ts';
import { convert, formatQuantity, quantityOf } from '../../units/format.ts';
import type { Quantity } from '../../units/quantity.ts';

/** How a thing is spoken of in a finding. */
interface Spoken {
  /** "the left fog lamp plug", "the 6 liner screws". */
  readonly the: string;
  readonly is: 'is' | 'are';
  readonly it: 'it' | 'them';
  readonly has: 'has' | 'have';
}

/** A thing with its number, and its side where it happens on one side alone. */
export function spoken(id: string, sides: Violation['sides'], guide: Guide): Spoken {
  const target = findTarget(guide, id);
  if (!target) return { the: `"${id}"`, is: 'is', it: 'it', has: 'has' };
  const noun = targetNoun(target);
  const counted = target.kind === 'item' && 'count' in target.item ? target.item : null;
  const sided = counted?.side?.value === 'each';
  const shown = sided ? sides : [];
  const each = counted ? handledEach(counted) : 1;
  const count = each * (sided && shown.length !== 1 ? 2 : 1);
  const [side] = shown.length === 1 ? shown : [];
  if (sided && each === 1 && !side) {
    return { the: `both ${noun.plural}`, is: 'are', it: 'them', has: 'have' };
  }
  const [only] = sides.length === 1 ? sides : [];
  if (target.kind === 'item' && target.item.kind === 'supply' && only) {
    return { the: `the ${noun.singular} on the ${guide.words[only]}`, is: 'is', it: 'it', has: 'has' };
  }
  const words = [...(count > 1 ? [String(count)] : []), ...(side ? [guide.words[side]] : [])];
  const the = ['the', ...words, count > 1 ? noun.plural : noun.singular].join(' ');
  return count > 1 ? { the, is: 'are', it: 'them', has: 'have' } : { the, is: 'is', it: 'it', has: 'has' };
}

/** What an action does to a thing, as in "the cover is lifted". */
export function done(verb: Verb, id: string, guide: Guide): string {
  const item = guide.items.get(id);
  if (verb === 'remove' && item && !isFixing(item)) return 'lifted';
  return participles[verb];
}

const participles: { readonly [V in Verb]: string } = {
  remove: 'removed',
  refit: 'refitted',
  fit: 'fitted',
  start: 'started',
  tighten: 'tightened',
  loosen: 'loosened',
  disconnect: 'disconnected',
  connect: 'connected',
  'move-aside': 'moved aside',
  'move-back': 'moved back',
  apply: 'put on',
  'take-off': 'taken off',
  set: 'set',
  clear: 'cleared',
  clean: 'cleaned',
  route: 'routed',
  measure: 'measured',
  inspect: 'inspected',
  cut: 'cut',
  drill: 'drilled',
  bond: 'bonded',
  discard: 'discarded',
  'hand-over': 'handed over',
};

/** Why an action does not fit the state of its item. */
type WrongState = 'repeated' | 'never-done' | 'not-started' | 'other';

/** Sorts an action that finds its item in a state that it cannot start from. */
export function wrongStateOf(verb: Verb, state: StateName): WrongState {
  if (verb === 'tighten') return state === 'tight' ? 'repeated' : 'not-started';
  if (state === 'discarded' || state === 'given to the owner') {
    return actionRule(verb).to.includes(state) ? 'repeated' : 'other';
  }
  if (verb === 'refit' || opposites[verb] !== undefined) return 'never-done';
  return actionRule(verb).to.includes(state) ? 'repeated' : 'other';
}

/** What should have come before an action that undoes: "removes it", "moves them aside". */
export function opposite(verb: Verb, { it }: Spoken): string {
  return opposites[verb]?.(it) ?? `prepares ${it}`;
}

const opposites: { readonly [V in Verb]?: (it: string) => string } = {
  refit: (it) => `removes ${it}`,
  connect: (it) => `disconnects ${it}`,
  'move-back': (it) => `moves ${it} aside`,
  'take-off': (it) => `puts ${it} on`,
  clear: (it) => `sets ${it}`,
};

/** Whether an id names an item of a kind. */
export function isA(id: string, kind: Item['kind'], guide: Guide): boolean {
  return guide.items.get(id)?.kind === kind;
}

/** An amount in base units, written in the unit of another. */
export function amountIn(like: Quantity, amount: number): string {
  const total = { ...like, base: amount as Quantity['base'] };
  return formatQuantity(quantityOf(like.dimension, convert(total, like.unit), like.unit));
}

/** The places besides the finding's own where a supply is used, each once. */
export function usedElsewhere({
  at,
  from,
}: {
  readonly at: Span;
  readonly from: readonly Span[];
}): readonly Note[] {
  const others = from.filter((one) => one.file !== at.file || one.start < at.start || one.start > at.end);
  return [...new Set(others)].map((one) => ({ message: 'used here too', at: one }));
}
