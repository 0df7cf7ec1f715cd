/**
 * The ledger a second time, written from the description of the format and not from the checker: a job is played
 * with one plain state for each piece on each side, for one build. It knows no spans, no plans and no messages, and
 * only says which rules a job breaks.
 */

/** A thing of a job; ids are lists separated by spaces where there may be several. */
export interface Thing {
  readonly kind:
    | 'part'
    | 'fastener'
    | 'kit'
    | 'connector'
    | 'condition'
    | 'setting'
    | 'inspection'
    | 'supply';
  readonly id: string;
  readonly holds?: string;
  readonly on?: string;
  readonly covers?: string;
  readonly needs?: string;
  readonly replaces?: string;
  readonly side?: 'each' | 'left' | 'right';
  readonly torque?: string;
  readonly free?: boolean;
  readonly reuse?: boolean;
  readonly temporary?: boolean;
  readonly stays?: boolean;
  /** What is looked at before so many of it are fitted as that asks for; the rest is left over by right. */
  readonly chosen?: string;
  readonly when?: 'fog';
}

/** One action: "remove cover", for all builds or for those with fog lamps. */
export interface Act {
  readonly verb: string;
  readonly id: string;
  readonly fog?: boolean;
  /** What a supply is put on. */
  readonly onto?: string;
}

/** A step of a job. */
export interface Work {
  readonly side?: 'each' | 'left' | 'right';
  readonly needs?: string;
  /** It is done where the thread that is inspected is found so, and may end the job. */
  readonly finding?: Finding;
  readonly stop?: boolean;
  /** How often it is done. */
  readonly times?: number;
  readonly acts: readonly Act[];
}

/** What the inspection of a job may find. */
export type Finding = 'rusty' | 'clean';

/** A whole job. */
export interface Job {
  readonly things: readonly Thing[];
  readonly works: readonly Work[];
  /** What the inspection finds on this vehicle. */
  readonly found: Finding;
}

/** The rules of the ledger, each by the fault that breaks it. */
export const rules = [
  'held',
  'plugged',
  'covered',
  'taken',
  'holds nothing',
  'connects nothing',
  'order',
  'sides',
  'needs of a thing',
  'needs of a step',
  'one-time put back',
  'one-time lost',
  'never lifted',
  'left off',
  'left loose',
  'left in the box',
  'left apart',
  'left set',
  'left unset',
  'left on',
] as const;

/** A rule of the ledger. */
export type RuleName = (typeof rules)[number];

type Where = '' | 'left' | 'right';

interface Piece {
  readonly thing: Thing;
  readonly where: Where;
  state: string;
  loosenedFirst: boolean;
  hung: boolean;
  /** What it was put on. */
  onto: string | undefined;
}

const list = (ids: string | undefined): readonly string[] => (ids ?? '').split(' ').filter((id) => id !== '');
const inPlace = (state: string) => ['in', 'tight', 'loose', 'started', 'on'].includes(state);
const beside = (a: Piece, b: Piece) => a.where === '' || b.where === '' || a.where === b.where;

/** The rules that a job breaks in a build with fog lamps, or in one without. */
export function broken(job: Job, fog: boolean): ReadonlySet<RuleName> {
  const faults = new Set<RuleName>();
  const things = new Map(job.things.filter((one) => fog || one.when !== 'fog').map((one) => [one.id, one]));
  const pieces = [...things.values()].flatMap(piecesOf);

  /** The supply that the left pass of a step took off as a whole. */
  let wholeOff: string | null = null;

  const named = (ids: string | undefined, near: Piece) =>
    pieces.filter((one) => list(ids).includes(one.thing.id) && beside(one, near));
  const old = (piece: Piece) => named(piece.thing.replaces, piece);
  const newer = (piece: Piece) =>
    pieces.filter((one) => list(one.thing.replaces).includes(piece.thing.id) && beside(one, piece));
  /** Everything that says of a piece, or of what it replaces, that it holds it, sits on it or covers it. */
  const about = (piece: Piece, name: 'holds' | 'on' | 'covers') =>
    pieces.filter(
      (one) =>
        one !== piece &&
        [piece, ...old(piece)].some(
          (under) => beside(one, under) && beside(one, piece) && relation(one, name).includes(under.thing.id),
        ),
    );
  function relation(piece: Piece, name: 'holds' | 'on' | 'covers'): readonly string[] {
    const own = list(piece.thing[name]);
    const isFresh = name === 'covers' || (name === 'holds' && own.length === 0);
    return isFresh ? [...own, ...old(piece).flatMap((one) => list(one.thing[name]))] : own;
  }
  const isFixing = ({ thing }: Piece) =>
    thing.kind === 'fastener' ||
    (thing.kind === 'supply' && thing.replaces !== undefined) ||
    (thing.kind === 'kit' &&
      (thing.torque !== undefined ||
        list(thing.holds).length > 0 ||
        things.get(thing.replaces ?? '')?.kind === 'fastener'));
  const stands = (piece: Piece) => inPlace(piece.state) || newer(piece).some(({ state }) => inPlace(state));
  const met = (ids: string | undefined) =>
    list(ids).every((id) => pieces.some((one) => one.thing.id === id && one.state === 'yes'));

  const free = (piece: Piece) => {
    const holds = (one: Piece) => inPlace(one.state) && !(one.thing.free && one.state === 'loose');
    if (!isFixing(piece) && about(piece, 'holds').some(holds)) faults.add('held');
  };
  const unplugged = (piece: Piece) => {
    if (about(piece, 'on').some(({ state }) => state === 'mated')) faults.add('plugged');
  };
  const open = (piece: Piece) => {
    if (about(piece, 'covers').some(({ state }) => inPlace(state))) faults.add('covered');
  };
  const vacant = (piece: Piece) => {
    if ([...old(piece), ...newer(piece)].some(({ state }) => inPlace(state))) faults.add('taken');
  };
  const under = (piece: Piece, after: string) => {
    if (!isFixing(piece) || (piece.thing.free && after !== 'tight')) return;
    const parts = pieces.filter(
      (one) => relation(piece, 'holds').includes(one.thing.id) && beside(one, piece),
    );
    if (!parts.every(stands)) faults.add('holds nothing');
  };

  function lapse(): void {
    for (let again = true; again; ) {
      again = false;
      for (const piece of pieces) {
        if (piece.thing.kind !== 'condition' || piece.state !== 'yes' || met(piece.thing.needs)) continue;
        piece.state = 'lapsed';
        again = true;
      }
    }
  }

  /** What a supply is put on, or comes off, lies open where it sits in its place. */
  const openTo = (piece: Piece) => {
    for (const one of named(piece.onto, piece)) if (inPlace(one.state)) open(one);
  };

  function act({ verb, id, onto }: Act, piece: Piece, later: readonly Act[]): void {
    const { thing, state } = piece;
    const from = (...states: readonly string[]) => {
      if (states.includes(state)) return true;
      faults.add('order');
      return false;
    };
    const inserted = isFixing(piece) ? (thing.torque || piece.loosenedFirst ? 'started' : 'tight') : 'in';
    const become = (next: string) => {
      piece.state = next;
    };
    if (verb !== 'clear' && !met(`${thing.needs ?? ''} ${thing.chosen ?? ''}`))
      faults.add('needs of a thing');
    const isOldOneTime = thing.kind === 'fastener' && thing.reuse === false && state === 'off';
    switch (verb) {
      case 'remove':
        if (from('in', 'tight', 'loose', 'started')) {
          free(piece);
          unplugged(piece);
          open(piece);
          piece.loosenedFirst = state === 'loose';
        }
        become('off');
        piece.hung = false;
        if (thing.kind === 'fastener') {
          for (const part of pieces.filter(
            (one) => relation(piece, 'holds').includes(one.thing.id) && beside(one, piece),
          )) {
            const held = about(part, 'holds').some(
              (one) => inPlace(one.state) && !(one.thing.free && one.state === 'loose'),
            );
            if (!held && part.state === 'in') part.hung = true;
          }
        }
        return;
      case 'refit':
      case 'fit':
      case 'start':
        if (from(...(verb === 'refit' ? ['off'] : ['off', 'box']))) {
          if (isOldOneTime && verb !== 'fit') faults.add('one-time put back');
          vacant(piece);
          open(piece);
          under(piece, verb === 'start' ? 'started' : inserted);
          const hung = pieces.some(
            (one) => one.hung && list(thing.holds).includes(one.thing.id) && beside(one, piece),
          );
          if (verb === 'refit' && hung) faults.add('never lifted');
        }
        become(verb === 'start' ? 'started' : inserted);
        return;
      case 'tighten':
        if (from('started', 'loose')) {
          if (thing.reuse === false && state === 'loose') faults.add('one-time put back');
          open(piece);
          under(piece, 'tight');
        }
        become('tight');
        return;
      case 'loosen':
        if (from('tight')) open(piece);
        become('loose');
        return;
      case 'disconnect':
        if (from('mated')) open(piece);
        become('apart');
        return;
      case 'connect':
        if (from('apart')) {
          open(piece);
          const seats = pieces.filter((one) => list(thing.on).includes(one.thing.id) && beside(one, piece));
          const inHand = (one: Piece) =>
            ['off', 'box'].includes(one.state) &&
            later.some((next) => next.id === one.thing.id && ['refit', 'fit'].includes(next.verb));
          const isThere = (one: Piece) =>
            stands(one) || one.state === 'aside' || [one, ...newer(one)].some(inHand);
          if (!seats.every(isThere)) faults.add('connects nothing');
        }
        become('mated');
        return;
      case 'move-aside':
        if (from('in')) {
          free(piece);
          open(piece);
        }
        piece.hung = false;
        become('aside');
        return;
      case 'move-back':
        if (from('aside')) {
          vacant(piece);
          open(piece);
        }
        become('in');
        return;
      case 'apply':
        if (thing.temporary) from('bare');
        vacant(piece);
        open(piece);
        under(piece, 'on');
        piece.onto = onto;
        openTo(piece);
        become('on');
        return;
      case 'inspect':
        become('yes');
        return;
      case 'set':
        from('no', 'lapsed', 'as found');
        become('yes');
        return;
      case 'clear':
        from('yes', 'lapsed');
        become(thing.kind === 'setting' ? 'as found' : 'no');
        lapse();
        return;
      case 'discard':
      case 'hand-over':
        if (from('off', 'box')) unplugged(piece);
        become('gone');
        return;
      default:
        throw new Error(`the oracle does not know how to ${verb} ${id}`);
    }
  }

  function takeOff(id: string, pass: Where): void {
    const all = pieces.filter(
      (one) => one.thing.id === id && (pass === '' || one.where === '' || one.where === pass),
    );
    const on = all.filter(({ state }) => state === 'on');
    // What was put on as a whole is off after the first of two passes.
    const isDone = pass === 'right' && wholeOff === id;
    if (on.length === 0 && !isDone) faults.add('order');
    for (const one of on) {
      openTo(one);
      one.state = 'bare';
    }
    wholeOff = pass === 'left' && on.some(({ where }) => where === '') ? id : wholeOff;
  }

  let ended = false;
  for (const work of job.works) {
    if (ended || (work.finding !== undefined && work.finding !== job.found)) continue;
    ended = work.stop === true;
    const asked = `${work.needs ?? ''} ${work.finding === undefined ? '' : 'thread'}`;
    const sides: readonly Where[] = work.side === 'each' ? ['left', 'right'] : [work.side ?? ''];
    const passes = sides.flatMap((side) => Array<Where>(work.times ?? 1).fill(side));
    if (!met(asked)) faults.add('needs of a step');
    wholeOff = null;
    for (const pass of passes) {
      const acts = work.acts.filter((one) => fog || !one.fog);
      for (const [index, one] of acts.entries()) {
        if (!met(asked)) faults.add('needs of a step');
        const thing = things.get(one.id);
        if (!thing) continue;
        const isSupply = thing.kind === 'supply';
        const isWhole = thing.side === undefined && work.side === 'each' && !isSupply;
        const isElsewhere =
          thing.side !== undefined &&
          thing.side !== 'each' &&
          work.side !== undefined &&
          work.side !== thing.side;
        if (isWhole || isElsewhere) faults.add('sides');
        if (isWhole && pass === 'right') continue;
        if (one.verb === 'take-off') takeOff(one.id, pass);
        else {
          const reached = pieces.filter(
            ({ thing: { id }, where }) =>
              id === one.id &&
              (thing.temporary ? where === pass : pass === '' || where === '' || where === pass),
          );
          for (const piece of reached) act(one, piece, acts.slice(index + 1));
        }
      }
    }
  }

  // Where a step ended the job, it is for others to say what becomes of the vehicle.
  if (!ended) for (const piece of pieces) end(piece);
  return faults;

  function end(piece: Piece): void {
    const { thing, state } = piece;
    const replaced = newer(piece).some((one) => inPlace(one.state));
    if (thing.kind === 'fastener' && thing.reuse === false && state === 'gone' && !replaced)
      faults.add('one-time lost');
    switch (thing.kind) {
      case 'connector': {
        const seats = pieces.filter((one) => list(thing.on).includes(one.thing.id) && beside(one, piece));
        const mayHang =
          list(thing.on).length > 0 &&
          seats.every((one) => one.state === 'gone' && !newer(one).some(({ state: now }) => inPlace(now)));
        if (state !== 'mated' && !mayHang) faults.add('left apart');
        return;
      }
      case 'condition':
        if (state === 'yes' && !thing.stays) faults.add('left set');
        return;
      case 'setting':
        if (state !== 'yes') faults.add('left unset');
        return;
      case 'inspection':
        return;
      case 'supply':
        if (state === 'on' && thing.temporary) faults.add('left on');
        return;
      default:
        if (state === 'box') {
          // Of what is chosen by a reading none may be wanted; what no step speaks of is forgotten.
          const isNamed = job.works.some(({ acts }) => acts.some(({ id }) => id === thing.id));
          if (thing.chosen === undefined || !isNamed) faults.add('left in the box');
        } else if (state === 'loose' || state === 'started') faults.add('left loose');
        else if (state === 'aside' || (state === 'off' && !(replaced && thing.kind !== 'kit')))
          faults.add('left off');
    }
  }

  function piecesOf(thing: Thing): readonly Piece[] {
    const sides: readonly Where[] = thing.temporary
      ? ['', 'left', 'right']
      : thing.side === 'each'
        ? ['left', 'right']
        : [thing.side ?? ''];
    const isOnKit = list(thing.on).some(
      (id) => things.get(id)?.kind === 'kit' || job.things.some((one) => one.id === id && one.kind === 'kit'),
    );
    const begin = {
      part: 'in',
      fastener: 'tight',
      kit: 'box',
      connector: isOnKit ? 'apart' : 'mated',
      condition: 'no',
      setting: 'as found',
      inspection: 'no',
      supply: 'bare',
    }[thing.kind];
    return sides.map((where) => ({
      thing,
      where,
      state: begin,
      loosenedFirst: false,
      hung: false,
      onto: undefined,
    }));
  }
}
