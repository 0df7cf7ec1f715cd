import { units } from '../../units/table.ts';
import type { Act, Fact, RecordLine } from '../record.ts';

/** What a change bears on; `words` changes nothing that is done. */
export type Touch = 'safety' | 'torque' | 'geometry' | 'time' | 'work' | 'words';

/** What a fact means, whichever way it is written: what it names counts, not what that is called. */
export function meaningOf({ says, means, ids }: Fact): string {
  return ids ? [...ids, means ?? ''].join(' ') : (means ?? says);
}

/** Facts that only say how a thing is called or looked up. */
const inWords: ReadonlySet<string> = new Set([
  'called',
  'called in a sentence',
  'title',
  'found as',
  'picture',
  'shows',
  'described as',
  'own words',
  'taken off',
  'meant for',
]);

const ofTorque: ReadonlySet<string> = new Set([
  'torque',
  'friction',
  'thread',
  'grade',
  'on its thread',
  'order of tightening',
  'order',
  'left-hand thread',
  'one by one',
  'never used again',
]);

const ofSafety: ReadonlySet<string> = new Set([
  'not for',
  'done by',
  'special care',
  'keeps the vehicle in place',
  'limit',
  'load',
  'current',
  'wire',
  'fuse',
  'voltage',
  'people',
  'checked by a second person',
]);

const ofTime: ReadonlySet<string> = new Set(['time', 'wait']);

/** What a change of a fact bears on. */
export function touchOfFact(name: string): Touch {
  if (inWords.has(name)) return 'words';
  if (ofTorque.has(name)) return 'torque';
  if (ofSafety.has(name)) return 'safety';
  return ofTime.has(name) ? 'time' : 'work';
}

/** Whether a line is a safety message. */
export function isMessage({ kind }: Pick<RecordLine, 'kind'>): boolean {
  return kind === 'danger' || kind === 'warning' || kind === 'caution' || kind === 'notice';
}

/** Whether something is only named, and nothing done to it. */
export function onlyNames({ verb }: Pick<Act, 'verb'>): boolean {
  return verb === 'name' || verb === 'name step';
}

/** What a line comes to for the ledger, and what of its words a hand would go by. */
interface Meaning {
  /** What is done, in order. */
  readonly done: readonly string[];
  /** What is only named, in no order. */
  readonly named: readonly string[];
  /** Numbers with their units, and words that turn a sentence round. */
  readonly weighty: readonly string[];
  readonly facts: readonly string[];
}

/** What some lines come to together. */
export function meaningOfLines(lines: readonly RecordLine[]): Meaning {
  const acts = lines.flatMap((line) => line.acts);
  return {
    done: acts.filter((act) => !onlyNames(act)).map(actKey),
    named: [...new Set(acts.filter(onlyNames).map(actKey))].sort(),
    weighty: lines.flatMap(({ words }) => weightyIn(words)),
    facts: lines.flatMap(({ facts }) =>
      facts.filter(({ name }) => touchOfFact(name) !== 'words').map(factKey),
    ),
  };
}

/** Whether two meanings are one. */
export function sameMeaning(one: Meaning, other: Meaning): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

/** Whether lines mean nothing that is done. */
export function meansNothing({ done, named, weighty, facts }: Meaning): boolean {
  return [done, named, weighty, facts].every(({ length }) => length === 0);
}

/** What a change from one meaning to another bears on. */
export function touchOfMeaning(before: Meaning, after: Meaning): Touch {
  if (sameMeaning(before, after)) return 'words';
  const differ = [
    ...onlyIn(before.done, after.done),
    ...onlyIn(after.done, before.done),
    ...onlyIn(before.weighty, after.weighty),
    ...onlyIn(after.weighty, before.weighty),
  ];
  if (differ.some((key) => /^tighten |^loosen | (?:N·m|lbf·ft|lbf·in)$/.test(key))) return 'torque';
  return differ.some((key) => /^(?:cut|drill) /.test(key)) ? 'geometry' : 'work';
}

function onlyIn(some: readonly string[], others: readonly string[]): readonly string[] {
  const left = [...others];
  return some.filter((one) => {
    const place = left.indexOf(one);
    if (place >= 0) left.splice(place, 1);
    return place < 0;
  });
}

function actKey({ verb, target, facts }: Act): string {
  return [verb, target, ...facts.map(factKey)].join(' ');
}

function factKey(fact: Fact): string {
  return `${fact.name}: ${meaningOf(fact)}`;
}

const unitNames: ReadonlySet<string> = new Set(units.map(({ name }) => name));

/**
 * Words that a hand goes by though no ledger knows them (common practice, no source): what is denied, when, on which
 * side, which way round, and how many.
 */
const turning = new Set(
  [
    'not never no none without only except unless until before after first last while',
    'left right front rear inside outside inner outer inwards outwards forwards backwards up down upwards downwards',
    'above below over under top bottom clockwise anticlockwise counterclockwise',
    'on off open closed open close dry wet hot cold live',
    'one two three four five six seven eight nine ten eleven twelve half quarter once twice both each every all',
  ].flatMap((line) => line.split(' ')),
);

/** The numbers, with their units, and the turning words of some text, in order. */
function weightyIn(words: string): readonly string[] {
  const bare = words.replace(/\{\d+[^{}]*\}/g, ' ').replace(/\{\d+/g, ' ');
  const tokens = bare.split(/\s+/).map((token) => token.replace(/^[^\p{L}\p{N}]+|[^\p{L}\p{N}°%²³]+$/gu, ''));
  return tokens.flatMap((token, index) => {
    const lower = token.toLowerCase();
    if (turning.has(lower)) return [lower];
    if (!/\d/.test(token)) return [];
    const unit = tokens[index + 1] ?? '';
    return [unitNames.has(unit) ? `${token} ${unit}` : token];
  });
}
