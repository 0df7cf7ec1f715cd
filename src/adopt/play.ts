import type { Verb } from '../model/inline.ts';
import { type Clause, type DeedKind, type Named, ownWord } from './clauses.ts';
import { type DraftThing, type Inventory, namesConnector, namesFastener, singularOf } from './inventory.ts';

/** What is made of a clause: an action of the format on a thing, or what keeps it from being one. */
type PlayedClause =
  | { readonly verb: Verb; readonly thing: DraftThing }
  | { readonly verb: null; readonly thing: DraftThing | null; readonly doubt: string | null };

/** What a clause stands in. */
export interface Around {
  readonly inventory: Inventory;
  /** Whether the old guide lists what is in the box. */
  readonly hasKitList: boolean;
  /** What the step last spoke of, for "them" and "it". */
  readonly last: DraftThing | null;
  /** What the rest of the clause says about it: `by hand`. */
  readonly rest: string;
  /** The torque that is stated for it. */
  readonly torque: string | null;
}

/**
 * Plays a clause on the things of the draft. An action comes of it only where the old words leave one reading: the thing
 * is known or named with its number, the number agrees, and it stands as the action needs it.
 */
export function playClause(clause: Clause, around: Around): PlayedClause {
  const { kind, named } = clause;
  const known = isPronoun(named) ? around.last : around.inventory.find(named.name);
  if (kind === null) return { verb: null, thing: known ?? spokenOf(clause, around), doubt: null };
  if (!known && isPronoun(named)) return unsure(null, `what is meant by “${named.name}”`);
  if (known && !agrees(named, known)) {
    // Another lot of the same name, which stands elsewhere.
    if (kind === 'remove' && known.kind !== 'kit' && named.qualifier !== '' && named.count !== null)
      return players.remove(named, null, around, clause.says);
    return unsure(
      known,
      `how many of the ${known.noun} this is about: ${known.count ?? 'no number'} are listed`,
    );
  }
  return players[kind](named, known, around, clause.says);
}

type Player = (named: Named, known: DraftThing | null, around: Around, says: string) => PlayedClause;

const players: { readonly [kind in DeedKind]: Player } = {
  remove: (named, known, { inventory }) => {
    if (known?.kind === 'supply')
      return unsure(known, 'where it goes on, with :apply and its amount, and comes off, with :take-off');
    if (known && known.state !== 'off' && known.state !== 'in the box') return act('remove', known, 'off');
    if (known && (known.state === 'in the box' || named.qualifier === ''))
      return unsure(known, `whether this is the same ${known.noun} as elsewhere`);
    if (!known && inventory.unsettled(named.name))
      return unsure(null, 'what this is first: a tool, a supply or from the box');
    if (!isCounted(named))
      return unsure(null, 'how many there are, in a line like ::fastener or ::part, and the action');
    const kind = namesFastener(named.name) ? 'fastener' : 'part';
    return act('remove', declared(named, kind, inventory), 'off');
  },
  refit: (_named, known, around) => {
    if (known?.state === 'off')
      return act('refit', known, known.attributes.has('torque') ? 'started' : 'tight');
    if (known?.kind === 'kit' && known.state === 'in the box') return putIn(known, around);
    return unsure(known, 'what goes back here; nothing of that name was taken off before');
  },
  'put-in': (named, known, around, says) => {
    if (known?.state === 'off')
      return act('refit', known, known.attributes.has('torque') ? 'started' : 'tight');
    if (known?.kind === 'kit' && known.state === 'in the box') return putIn(known, around);
    if (known || around.inventory.isAmbiguous(named.name))
      return unsure(known, `which ${singularOf(named.name, 2)} this is, and the action`);
    const plain = /^(?:fit|install|mount|attach|insert)$/i.test(says);
    if (!plain || !isCounted(named) || (named.count === null && around.hasKitList)) return unsure(null, null);
    const made = declared(named, 'kit', around.inventory);
    made.doubts.push('whether it comes in the box; the old guide does not list it');
    return putIn(made, around);
  },
  tighten: (named, known, { inventory, torque, rest }) => {
    // With the fingers is not tight.
    if (byHand.test(rest))
      return known?.state === 'in the box' && isTurned(known)
        ? act('start', known, 'started')
        : unsure(known, null);
    if (!known && !namesFastener(named.name))
      return unsure(null, torque === null ? null : 'what is tightened to this');
    const thing = known ?? declared(named, 'fastener', inventory);
    if (!known && thing.count === null) thing.doubts.push('how many there are');
    if (!known) thing.state = 'tight';
    if (thing.state === 'started' || thing.state === 'loosened') return act('tighten', thing, 'tight');
    return unsure(thing, `where the ${thing.noun} is put in, with :start or :fit, and then :tighten here`);
  },
  loosen: (named, known, { inventory }) => {
    if (!known && !(isCounted(named) && namesFastener(named.name)))
      return unsure(null, 'what is loosened, in a line like ::fastener with its number');
    const thing = known ?? declared(named, 'fastener', inventory);
    const sound = thing.kind === 'fastener' || (thing.kind === 'kit' && thing.attributes.has('torque'));
    if (sound && (thing.state === 'in place' || thing.state === 'tight'))
      return act('loosen', thing, 'loosened');
    return unsure(thing, `where the ${thing.noun} is tight before it is loosened`);
  },
  disconnect: (named, known, { inventory }) => {
    if (known?.kind === 'connector' && known.state === 'in place') return act('disconnect', known, 'apart');
    if (known || !namesConnector(named.name) || !isCounted(named))
      return unsure(
        known,
        'whether this is a plug, with ::connector, or a state of the vehicle, with ::condition',
      );
    return act('disconnect', declared(named, 'connector', inventory), 'apart');
  },
  connect: (_named, known) =>
    known?.kind === 'connector' && known.state === 'apart'
      ? act('connect', known, 'in place')
      : unsure(known, null),
  discard: (_named, known) =>
    known && known.state === 'off' ? act('discard', known, 'gone') : unsure(known, 'what is thrown away'),
};

const byHand = /\b(?:by hand|finger[- ]tight|hand[- ]tight|loose(?:ly)?)\b/i;

/** Whether a thing from the box is a fastener for the format, which its torque or its drive makes it. */
function isTurned({ attributes }: DraftThing): boolean {
  return attributes.has('torque') || attributes.has('drive');
}

/** Puts in what comes in the box: with the fingers where the words say so, else for good. */
function putIn(thing: DraftThing, { rest }: Around): PlayedClause {
  if (isTurned(thing) && byHand.test(rest)) return act('start', thing, 'started');
  return act('fit', thing, thing.attributes.has('torque') ? 'started' : 'tight');
}

/** Fasteners that a sentence counts without doing anything to them. */
function spokenOf({ named, before }: Clause, { inventory }: Around): DraftThing {
  const holds = /^(?:by|has|have)$/.test(before);
  const made = declared(named, holds ? 'fastener' : 'kit', inventory);
  if (!holds)
    made.doubts.push('whether it comes in the box or is on the vehicle; the old guide does not list it');
  return made;
}

function declared(named: Named, kind: DraftThing['kind'], inventory: Inventory): DraftThing {
  const again = inventory.find(named.name, [kind]) !== null || inventory.isAmbiguous(named.name);
  const count = named.count ?? (isPlural(named.name) ? null : 1);
  const made = inventory.add({
    kind,
    name: named.name,
    count,
    eachSide: named.eachSide,
    qualifier: again ? named.qualifier : '',
  });
  if (named.drive !== null && !made.attributes.has('type')) made.attributes.set('drive', named.drive);
  return made;
}

function act(verb: Verb, thing: DraftThing, state: DraftThing['state']): PlayedClause {
  thing.state = state;
  return { verb, thing };
}

function unsure(thing: DraftThing | null, doubt: string | null): PlayedClause {
  return { verb: null, thing, doubt };
}

function isPronoun({ name }: Named): boolean {
  return /^(?:them|it|these|both)$/.test(name);
}

function agrees({ count, eachSide, name }: Named, known: DraftThing): boolean {
  if (eachSide !== known.eachSide && count !== null) return false;
  return count === null
    ? isPronoun({ name } as Named) || known.count !== 1 || !isPlural(name)
    : count === (known.count ?? count);
}

function isPlural(name: string): boolean {
  return singularOf(name, 2) !== name;
}

/** Whether the words say how many: a number, or one that is named with its article. */
function isCounted({ count, definite, name }: Named): boolean {
  return count !== null || (definite && !isPlural(name));
}

/** The verb that an action prints where nothing else is said. */
export function printedVerb(verb: Verb, kind: DeedKind): Verb {
  return verb === 'start' || verb === 'refit' || verb === 'fit' ? verb : ownWord[kind];
}
