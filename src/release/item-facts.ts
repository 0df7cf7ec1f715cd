import type { Item } from '../model/item.ts';
import { formatDrive, writtenDrive } from '../trade/drives.ts';
import { formatBoth } from '../units/format.ts';
import { recheckWords } from '../units/recheck.ts';
import { formatTorque, type TorquePass } from '../units/torque.ts';
import { names, onlyFor, quantityFact, rangeFact, spaced, type Telling, told, yesFact } from './facts.ts';
import type { Fact, ItemNode } from './record.ts';

/** Every field that some kind of item has. */
type Field = Item extends infer One ? (One extends unknown ? keyof One : never) : never;

/** What a field holds, of whichever kinds have it. */
type Held<F extends Field> = Item extends infer One
  ? One extends unknown
    ? F extends keyof One
      ? One[F]
      : never
    : never
  : never;

/** Places, what names the item, and what follows from the rest. */
type Untold =
  | 'kind'
  | 'id'
  | 'at'
  | 'idAt'
  | 'origins'
  | 'unknown'
  // Where it lies on the drawing is shown as pictures are, which a fingerprint leaves out too.
  | 'zones'
  | 'picture'
  | 'countWritten'
  | 'isFastener'
  | 'inCrib'
  | 'fromPlatform';

/** How each field is told: the compiler asks for every new one. */
const tellers: {
  readonly [F in Exclude<Field, Untold>]: (held: Held<F>, telling: Telling) => readonly Fact[];
} = {
  noun: ({ label, singular, plural }) => [
    { name: 'called', says: spaced(label) },
    { name: 'called in a sentence', says: `${spaced(singular)}, ${spaced(plural)}` },
  ],
  when: (when, telling) => onlyFor(when?.value, telling),
  count: ({ value }) => told('count', String(value)),
  side: (side) => told('side', side?.value),
  spare: (spare) => told('spares', spare && String(spare.value)),
  torque: (torque) =>
    torque
      ? [{ name: 'torque', says: formatTorque(torque.value), means: torque.value.map(pass).join() }]
      : [],
  drive: (drive) =>
    drive ? [{ name: 'drive', says: formatDrive(drive.value), means: writtenDrive(drive.value) }] : [],
  standard: (standard) => told('standard', standard?.value),
  thread: (thread) => told('thread', thread?.value.name),
  grade: (grade) => told('grade', grade?.value),
  friction: (friction) =>
    friction ? [{ name: 'friction', says: friction.value.words, means: String(friction.value.k) }] : [],
  pattern: (pattern) => told('order of tightening', pattern?.value),
  chosenBy: (ref, telling) => names('as many as asked by', ref ? [ref] : [], telling),
  coat: (coat, telling) => names('on its thread', coat ? [coat] : [], telling),
  leftHand: (is) => yesFact('left-hand thread', is),
  oneByOne: (is) => yesFact('one by one', is),
  holds: (refs, telling) => names('holds', refs, telling),
  covers: (refs, telling) => names('covers', refs, telling),
  takes: (refs, telling) => names('takes for good', refs, telling),
  on: (refs, telling) => names('sits on', refs, telling),
  stack: (refs, telling) => names('lies on it', refs, telling, true),
  replaces: (ref, telling) => names('takes the place of', ref ? [ref] : [], telling),
  reuse: (is) => yesFact('never used again', !is),
  freeWhenLoosened: (is) => yesFact('frees its part once loosened', is),
  type: (ref) => told('type', ref?.value),
  needs: (refs, telling) => names('needs', refs, telling),
  with: (refs, telling) => names('worked with', refs, telling),
  or: (refs, telling) => names('or else', refs, telling),
  work: (work) => told('special care', work?.value),
  immobile: (is) => yesFact('keeps the vehicle in place', is),
  recheck: (recheck) => told('looked at again after', recheck && recheckWords(recheck.value)),
  synonyms: (words) => told('found as', words.join(', ')),
  atHand: (count) => (count === 1 ? [] : told('at hand', String(count))),
  range: (held) => rangeFact('range', held),
  cutterRadius: (held) => quantityFact('cutter radius', held),
  diameter: (held) => quantityFact('diameter', held),
  offset: (held) => quantityFact('offset', held),
  length: (held) => quantityFact('length', held),
  dries: (held) => quantityFact('dries', held),
  cures: (held) => quantityFact('cures', held),
  openTime: (held) => quantityFact('open time', held),
  yields: (held) =>
    held ? told('goes for', `${formatBoth(held.value.does)} to ${formatBoth(held.value.of)}`) : [],
  pack: (held) => quantityFact('package', held),
  quantity: (held) => quantityFact('quantity', held),
  temporary: (is) => yesFact('comes off again', is),
  stays: (is) => yesFact('stays', is),
  setWords: (words) => told('set by', words),
  clearWords: (words) => told('ended by', words),
  expect: (held) => rangeFact('expected', held),
  words: (words) => told('expected words', words.join(', ')),
  outcomes: (refs) => told('may be found', refs.map(({ value }) => value).join(', ')),
  from: ({ value }) => told('from', value),
  to: ({ value }) => told('to', value),
  limit: (held) => quantityFact('limit', held),
  claim: (held) => quantityFact('load', held),
  wire: (held) => told('wire', held?.value.size),
  fuse: (held) => quantityFact('fuse', held),
  colour: (held) => told('colour', held?.value),
  ends: (refs, telling) => names('on its ends', refs, telling, true),
  crimps: (held) => rangeFact('crimps', held),
  solders: (is) => yesFact('solders', is),
  voltage: (held) => quantityFact('voltage', held),
  load: (held) => quantityFact('current', held),
};

/** An item with all that is stated of it. */
export function itemNode(item: Item, telling: Telling): ItemNode {
  const tell = <F extends keyof typeof tellers>(field: F): readonly Fact[] =>
    field in item ? tellers[field](item[field as keyof Item] as Held<F>, telling) : [];
  const fields = Object.keys(tellers) as (keyof typeof tellers)[];
  return {
    id: item.id,
    kind: item.kind,
    name: item.noun.label,
    facts: fields.flatMap((field) => tell(field)),
    lines: [],
  };
}

function pass(one: TorquePass): string {
  return one.kind === 'torque' ? `${Number(one.value.base.toPrecision(6))} N·m` : `${one.angle.base}°`;
}
