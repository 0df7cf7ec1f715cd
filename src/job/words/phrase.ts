import type { Action, Mention, SequencePlace, Verb } from '../../model/inline.ts';
import type { Counted, Item, Noun, Setting, Side } from '../../model/item.ts';
import type { TradeWords } from '../../trade/words.ts';
import { formatBoth } from '../../units/format.ts';
import { formatTorque } from '../../units/torque.ts';
import { actionRule, isFixing } from '../actions/actions.ts';
import { holesOf, type Target } from '../actions/target.ts';
import { capitalised, lowered, nounOf } from './noun.ts';

export { nounOf } from './noun.ts';

/** Where a phrase stands. */
export interface PhrasePlace {
  /** The side of its step: within a step done on each side, an action names one side's. */
  readonly stepSide: Side | null;
  /** Whether a sentence begins with it. */
  readonly starts: boolean;
  readonly words: TradeWords;
}

/** An action as words: "remove the 3 liner screws", "Disconnect both fog lamp plugs". */
export function actionWords(action: Action, target: Target, place: PhrasePlace): string {
  const stated = action.say === null ? conditionWords(action, target) : null;
  if (stated) return place.starts ? capitalised(stated) : stated;
  const { words: table, particle } = actionRule(action.verb);
  const words = action.verb === 'clear' && isSetting(target) ? 'set' : table;
  const object = objectWords(action, target, place);
  const parts =
    action.say === null && particle !== null ? [words, object, particle] : [action.say ?? words, object];
  const turning = action.inSequence ? '' : `${settingWords(action, target)}${turnWords(action, target)}`;
  const plain = action.inSequence
    ? inSequenceWords(action.inSequence, action.say ?? words)
    : [...parts, torqueWords(action, target), action.to === null ? '' : `to ${action.to}`]
        .filter((part) => part !== '')
        .join(' ');
  const phrase = `${plain}${turning}`;
  return place.starts ? capitalised(phrase) : phrase;
}

/** A mention as words: the noun alone, or what `as=` says. */
export function mentionWords(mention: Mention, noun: Noun, starts: boolean): string {
  const words = mention.as ?? inSentence(noun.singular);
  return starts ? capitalised(words) : words;
}

/**
 * The name of a look-alike, "spacer, 12 mm", as it stands in a sentence: "spacer (12 mm)", so that "fit the spacer,
 * 12 mm in front" is not taken for a distance. Any other name ends before its first comma.
 */
function inSentence(name: string): string {
  const comma = name.indexOf(',');
  return comma < 0 ? name : `${name.slice(0, comma)} (${name.slice(comma + 1).trim()})`;
}

/** What the target of an action is called. */
export function targetNoun(target: Target): Noun {
  switch (target.kind) {
    case 'item':
      return target.item.noun;
    case 'template':
      return nounOf(target.template.title);
    case 'hole':
      return nounOf(target.feature.label);
  }
}

/** Whether an item is counted and may stand on both sides. */
export function isCounted(item: Item): item is Item & Counted {
  return 'count' in item;
}

/** How many an item is in all, both sides together; 1 for what is not counted. */
export function totalCount(item: Item): number {
  return isCounted(item) ? item.count.value * (item.side?.value === 'each' ? 2 : 1) : 1;
}

/** How many of an item are handled on each of its sides: named spares stay in the box. */
export function handledEach(item: Item): number {
  if (!isCounted(item)) return 1;
  return item.count.value - (item.kind === 'kit' ? (item.spare?.value ?? 0) : 0);
}

/** How many of an item are handled in all, both sides together, without spares; 1 for what is not counted. */
export function handledCount(item: Item): number {
  return handledEach(item) * (isCounted(item) && item.side?.value === 'each' ? 2 : 1);
}

/** "6 (3 each side)", "2 (1 each side)", "4": how many are handled, as lists print it. */
export function countWords(item: Item): string {
  const total = handledCount(item);
  return isCounted(item) && item.side?.value === 'each'
    ? `${total} (${handledEach(item)} each side)`
    : String(total);
}

/** A torque in both units, all passes; empty where the item has none. */
export function itemTorqueWords(item: Item): string {
  return isFixing(item) && item.torque ? formatTorque(item.torque.value) : '';
}

/** "tighten the bar bolts in sequence", said once for all of them: which and how far stands in the list that follows. */
function inSequenceWords({ label, place }: SequencePlace, verb: string): string {
  return place === 0 ? `${verb} the ${lowered(label)} in sequence` : '';
}

/** Which verbs turn a fastener in, and which turn it out. */
const turnsIn: ReadonlySet<Verb> = new Set<Verb>(['start', 'tighten', 'refit', 'fit']);
const turnsOut: ReadonlySet<Verb> = new Set<Verb>(['loosen', 'remove']);

/**
 * What a hand that knows ordinary bolts would get wrong: the way it turns, and that the others stay tight. That is
 * said where one comes loose: "the 2 bolts, one at a time" of putting them in would say that all of them are out.
 */
function turnWords({ verb }: Action, target: Target): string {
  if (target.kind !== 'item' || !isFixing(target.item)) return '';
  const { leftHand, oneByOne } = target.item;
  const turned = turnsIn.has(verb) ? 'anticlockwise' : turnsOut.has(verb) ? 'clockwise' : null;
  if (turned === null) return '';
  const isAlone = oneByOne && handledCount(target.item) > 1 && turnsOut.has(verb);
  const alone = isAlone ? ', one at a time, each tight again before the next' : '';
  return `${alone}${leftHand ? ` (left-hand thread: turn ${turned})` : ''}`;
}

/** What a condition itself says is done where it is set or cleared. */
function conditionWords(action: Action, target: Target): string | null {
  if (target.kind !== 'item' || target.item.kind !== 'condition') return null;
  if (action.verb === 'set') return target.item.setWords;
  return action.verb === 'clear' ? target.item.clearWords : null;
}

function isSetting(target: Target): target is { readonly kind: 'item'; readonly item: Setting } {
  return target.kind === 'item' && target.item.kind === 'setting';
}

/** "from not fitted to 13-pin socket", and the other way round where a setting is set back. */
function settingWords({ verb }: Action, target: Target): string {
  if (!isSetting(target)) return '';
  const { from, to } = target.item;
  return verb === 'clear'
    ? ` back from “${to.value}” to “${from.value}”`
    : ` from “${from.value}” to “${to.value}”`;
}

function torqueWords(action: Action, target: Target): string {
  if (action.verb !== 'tighten' || target.kind !== 'item') return '';
  const torque = itemTorqueWords(target.item);
  return torque === '' ? '' : `to ${torque}`;
}

function objectWords(action: Action, target: Target, { stepSide, words }: PhrasePlace): string {
  const noun = targetNoun(target);
  if (target.kind !== 'item') {
    const count = target.kind === 'hole' ? holesOf(target.feature) : 1;
    const sides = target.template.side === 'each' && stepSide === null ? 2 : 1;
    return countedWords(action.as, noun, count, sides, null);
  }
  const { item } = target;
  if (item.kind === 'supply') return supplyWords(action, noun);
  if (item.kind === 'condition' && action.as === null) return `“${noun.singular}”`;
  if (!isCounted(item)) return countedWords(action.as, noun, 1, 1, null);
  const side = item.side?.value ?? null;
  const count = handledEach(item);
  const sides = side === 'each' && stepSide === null ? 2 : 1;
  const told = stepSide === null && side !== null && side !== 'each' ? words[side] : null;
  if (item.kind === 'kit' && item.chosenBy && action.verb === 'fit') {
    const total = count * sides;
    return total === 1
      ? `the ${action.as ?? inSentence(noun.singular)}, where needed`
      : `as many of the ${total} ${action.as ?? inSentence(noun.plural)} as needed`;
  }
  return countedWords(action.as, noun, count, sides, told);
}

function supplyWords(action: Action, noun: Noun): string {
  const name = action.as ?? inSentence(noun.singular);
  if (action.verb !== 'apply') return `the ${name}`;
  return action.amount ? `${formatBoth(action.amount.value)} of ${name}` : name;
}

function countedWords(
  as: string | null,
  noun: Noun,
  count: number,
  sides: number,
  side: string | null,
): string {
  const name = as ?? inSentence(count * sides === 1 ? noun.singular : noun.plural);
  if (sides === 2) {
    return count === 1 ? `both ${name}` : `the ${count * 2} ${name} (${count} each side)`;
  }
  // A name that an author has given a side already tells it, in the word of the trade or the usual one.
  const spelled = ` ${name.toLowerCase().replace(/[^\p{L}]+/gu, ' ')} `;
  const isSaid = side !== null && [side, 'left', 'right'].some((one) => spelled.includes(` ${one} `));
  const tellsSide = side !== null && as === null && !isSaid;
  const prefix = tellsSide ? `${side} ` : '';
  return count === 1 ? `the ${prefix}${name}` : `the ${count} ${prefix}${name}`;
}
