import type { Fault } from '../../../src/job/dry-run/ledger.ts';
import type { StateName } from '../../../src/model/violation.ts';
import type { RehearsalData } from '../../../src/pages/rehearsal/rehearsal-data.ts';
import { capitalised } from '../bay/elements.ts';
import type { Session, Task, Verdict } from './session.ts';

type OneSide = 'left' | 'right';
type FaultOf<K extends Fault['kind']> = Extract<Fault, { readonly kind: K }>;

/** Several things of one id, as they are spoken of within a sentence. */
interface Spoken {
  /** "the arch screw on the left", "3 liner screws on the left", "both arch screws". */
  readonly words: string;
  readonly are: 'is' | 'are';
  readonly they: 'it' | 'they';
  readonly them: 'it' | 'them';
}

/** Says what the judge of a rehearsal finds, in the words of the guide. */
export interface Speaker {
  /** What is chosen: "Remove the 3 liner screws, left". */
  readonly task: (task: Task) => string;
  /** "step 6, Take down the undertray", or the title of a proof. */
  readonly place: (task: Pick<Task, 'step' | 'scene'>) => string;
  readonly step: (id: string) => string;
  /** Why a choice does not go; empty for one that does. */
  readonly verdict: (verdict: Verdict) => string;
  /** How a thing is called, with its number and its side. */
  readonly thing: (id: string, sides: readonly OneSide[]) => string;
}

const states: { readonly [S in StateName]: string } = {
  'in the box': 'still in the box',
  'in place': 'in place',
  started: 'only started',
  tight: 'tight',
  loosened: 'loosened',
  off: 'off',
  aside: 'moved aside',
  mated: 'plugged in',
  apart: 'unplugged',
  on: 'on',
  'not on': 'not on',
  holds: 'seen to',
  'does not hold': 'not seen to',
  lapsed: 'no longer so',
  'not done': 'not done',
  'as found': 'as found',
  set: 'set',
  done: 'done',
  discarded: 'discarded',
  'given to the owner': 'given to the owner',
};

/** Words for one plan of a guide. */
export function speaker(data: RehearsalData, plan: number, { tasks }: Pick<Session, 'tasks'>): Speaker {
  const { ledger, names, words } = data;
  const kinds = new Map(ledger.lots.map(({ id, thing }) => [id, thing?.kind ?? null]));

  function spoken(id: string, sides: readonly OneSide[]): Spoken {
    const lots = ledger.lots.filter((lot) => lot.id === id);
    const name = names[id] ?? { one: id, many: id };
    const each = lots[0]?.handled ?? 1;
    const sided = lots.length === 2 && lots.every(({ side }) => side !== undefined);
    const told = sided ? [...new Set(sides)] : [];
    const count = each * (sided && told.length !== 1 ? 2 : 1);
    const at = told.length === 1 && told[0] ? ` on the ${words[told[0]]}` : '';
    if (count === 1) return { words: `the ${name.one}${at}`, are: 'is', they: 'it', them: 'it' };
    const many = sided && at === '' && each === 1 ? `both ${name.many}` : `the ${count} ${name.many}${at}`;
    return { words: many, are: 'are', they: 'they', them: 'them' };
  }

  /** A condition by its name, anything else as it is counted. */
  const called = (id: string) =>
    kinds.get(id) === 'condition' ? `“${names[id]?.one ?? id}”` : spoken(id, []).words;

  /** Faults of one kind about one thing are said together: "both arch screws, the 7 top clips". */
  function together<F extends Fault>(faults: readonly F[], cause: (fault: F) => string): string {
    const sides = new Map<string, OneSide[]>();
    for (const fault of faults) {
      const own = sides.get(cause(fault)) ?? [];
      if (fault.side) own.push(fault.side);
      sides.set(cause(fault), own);
    }
    return listed([...sides].map(([id, own]) => spoken(id, own).words));
  }

  function stepWords(id: string): string {
    const number = data.plans[plan]?.numbers[id];
    const title = data.steps[id]?.title ?? id;
    return number === undefined ? title : `step ${number}, ${title}`;
  }

  const placeWords = ({ step, scene }: Pick<Task, 'step' | 'scene'>) =>
    step === null ? (data.titles[scene] ?? '') : stepWords(step);

  function taskWords({ action, move, scene, step }: Task): string {
    const title = data.titles[scene] ?? '';
    if (action === null || !move) return step === null ? `Prove it: ${title}` : title;
    const text = data.actions[action]?.text ?? '';
    return move.side ? `${text}, ${words[move.side]}` : text;
  }

  function wrongState({ item, state, action }: FaultOf<'wrong-state'>, sides: readonly OneSide[]): string {
    const { words: what, are, they } = spoken(item, sides);
    const verb = action?.verb;
    const isThere = verb !== undefined && ends[verb]?.includes(state);
    const kind = kinds.get(item);
    if (kind === 'condition')
      return `${called(item)} ${isThere && verb === 'set' ? 'holds already' : 'does not hold, so there is nothing to undo'}.`;
    if (isThere) return `${capitalised(what)} ${are} ${states[state]} already.`;
    return `${capitalised(what)} ${are} ${states[state]}, so ${they} cannot be ${verb ? done[verb] : 'worked on'}.`;
  }

  function needsUnmet({ need, ended }: FaultOf<'needs-unmet'>): string {
    const kind = kinds.get(need);
    const name = names[need]?.one ?? need;
    if (kind === 'measure') return `This waits for a reading that has not been taken: ${name}.`;
    if (kind === 'inspection') return `What hangs on it has not been looked at yet: ${name}.`;
    if (kind === 'setting') return `This waits until the ${name} is set.`;
    if (kind === 'supply') return `This waits until the ${name} is on.`;
    return `This needs “${name}”, which ${ended ? 'no longer holds' : 'does not hold yet'}.`;
  }

  function nothingThere(id: string, side: OneSide | null, state: StateName, why: string): string {
    const part = spoken(id, side ? [side] : []);
    return `There is nothing ${why}: ${part.words} ${part.are} ${states[state]}.`;
  }

  /** What faults of one kind say; those of another thing say it in a sentence of their own. */
  function sentence(fault: Fault, all: readonly Fault[]): string {
    const alike = <K extends Fault['kind']>(kind: K) =>
      all.filter((one): one is FaultOf<K> => one.kind === kind && one.item === fault.item);
    const item = fault.item === null ? null : spoken(fault.item, fault.side ? [fault.side] : []);
    const what = capitalised(item?.words ?? '');
    const them = item?.them ?? 'it';
    switch (fault.kind) {
      case 'still-held': {
        const part = spoken(
          fault.item,
          alike('still-held').flatMap(({ side }) => side ?? []),
        );
        return `${capitalised(part.words)} ${part.are} still held by ${together(alike('still-held'), ({ by }) => by)}.`;
      }
      case 'still-connected': {
        const plugs = alike('still-connected');
        const are =
          plugs.length > 1 ||
          spoken(
            fault.by,
            plugs.flatMap(({ side }) => side ?? []),
          ).are === 'are';
        const said = together(plugs, ({ by }) => by);
        return `${capitalised(said)} ${are ? 'are' : 'is'} still plugged in, on ${spoken(fault.item, []).words}.`;
      }
      case 'still-covered': {
        const over = together(alike('still-covered'), ({ by }) => by);
        return `${what} cannot be reached: ${over} ${alike('still-covered').length > 1 ? 'lie' : 'lies'} over ${them}.`;
      }
      case 'nothing-to-hold':
        return nothingThere(fault.part, fault.side, fault.state, `for ${item?.words} to hold`);
      case 'nothing-to-connect':
        return nothingThere(fault.part, fault.side, fault.state, `for ${item?.words} to go on`);
      case 'place-taken':
        return `The place is taken: ${spoken(fault.by, fault.side ? [fault.side] : []).words} still ${spoken(fault.by, []).are} in it.`;
      case 'wrong-state':
        return wrongState(
          fault,
          alike('wrong-state').flatMap(({ side, state }) => (side && state === fault.state ? [side] : [])),
        );
      case 'needs-unmet':
        return needsUnmet(fault);
      case 'before-trial':
        return `What is cut stays cut, so the trial fit comes first: ${stepWords(fault.trial.value)}.`;
      case 'stack-open':
        return `The joint would be closed without ${spoken(fault.part, []).words}, which ${spoken(fault.part, []).are === 'is' ? 'belongs' : 'belong'} on ${spoken(fault.item, []).words}.`;
      case 'coat-missing':
        return `${what} would go in dry: ${names[fault.supply]?.one ?? fault.supply} goes on the thread first.`;
      case 'loose-together':
        return fault.by === fault.item
          ? `${what} ${item?.are} done one at a time, each tight before anything else is begun.`
          : `${capitalised(spoken(fault.by, []).words)} ${spoken(fault.by, []).are} loose, and only one may be: what is loose is tightened first.`;
      case 'bonded':
        return `${what} ${item?.are} bonded and ${item?.are === 'are' ? 'do' : 'does'} not come off again.`;
      case 'one-time-refitted':
        return `${what} ${item?.are === 'are' ? 'serve' : 'serves'} once: a new one goes in.`;
      case 'never-lifted':
        return `Nothing holds ${spoken(fault.part, []).words} any more, and it has not come off: that is done first.`;
      case 'side-mismatch':
        return `${what} ${item?.are} on the other side.`;
      case 'left':
        return `${what} would stay behind: ${states[fault.state]}.`;
      case 'one-time-lost':
        return `${what} would be gone, with no new one in place.`;
      case 'never-made':
        return `${what} would never be made.`;
      case 'never-applied':
        return `${what} would never be put on.`;
      case 'supply-overused':
        return `There would not be enough of ${names[fault.item]?.one ?? fault.item}.`;
    }
  }

  function sentences(faults: readonly Fault[]): string {
    // Where a thing is in another state than the action asks for, nothing else matters.
    const states = faults.filter(({ kind }) => kind === 'wrong-state');
    const told = states.length > 0 ? states : faults;
    return [...new Set(told.map((fault) => sentence(fault, told)))].join(' ');
  }

  function verdictWords(verdict: Verdict): string {
    switch (verdict.kind) {
      case 'done':
        return '';
      case 'done-before':
        return 'That is done already.';
      case 'refused':
        return sentences(verdict.faults);
      case 'after':
        return `The guide has this after ${stepWords(verdict.step)}.`;
      case 'out-of-turn': {
        const first = tasks[verdict.first];
        return first ? `These are tightened in sequence. First comes: ${taskWords(first)}.` : '';
      }
      case 'bars': {
        const late = verdict.task === null ? undefined : tasks[verdict.task];
        const why = sentences(verdict.faults);
        return late
          ? `Not yet. If this is done now, “${taskWords(late)}” can no longer be done (${placeWords(late)}). ${why}`
          : `Not yet. If this is done now, the job does not come out right. ${why}`;
      }
    }
  }

  return {
    task: taskWords,
    place: placeWords,
    step: stepWords,
    verdict: verdictWords,
    thing: (id, sides) => (kinds.get(id) === 'condition' ? called(id) : spoken(id, sides).words),
  };
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(words: readonly string[]): string {
  const head = words.slice(0, -1).join(', ');
  const tail = words.at(-1) ?? '';
  return head === '' ? tail : `${head} and ${tail}`;
}

type Verb = NonNullable<Fault['action']>['verb'];

/** The states in which an action has nothing left to do. */
const ends: { readonly [V in Verb]?: readonly StateName[] } = {
  remove: ['off', 'discarded', 'given to the owner'],
  refit: ['in place', 'started', 'tight'],
  fit: ['in place', 'started', 'tight'],
  start: ['started', 'tight'],
  tighten: ['tight'],
  loosen: ['loosened'],
  disconnect: ['apart'],
  connect: ['mated'],
  'move-aside': ['aside'],
  'move-back': ['in place'],
  apply: ['on'],
  'take-off': ['not on'],
  set: ['holds', 'set'],
  clear: ['does not hold', 'as found'],
  cut: ['done'],
  drill: ['done'],
  measure: ['done'],
  inspect: ['done'],
  bond: ['in place'],
  discard: ['discarded'],
  'hand-over': ['given to the owner'],
};

const done: { readonly [V in Verb]: string } = {
  remove: 'removed',
  refit: 'refitted',
  fit: 'fitted',
  start: 'started',
  tighten: 'tightened',
  loosen: 'loosened',
  disconnect: 'unplugged',
  connect: 'plugged in',
  'move-aside': 'moved aside',
  'move-back': 'moved back',
  apply: 'put on',
  'take-off': 'taken off',
  set: 'set',
  clear: 'cleared',
  clean: 'cleaned',
  route: 'laid',
  measure: 'measured',
  inspect: 'looked at',
  cut: 'cut',
  drill: 'drilled',
  bond: 'bonded',
  discard: 'discarded',
  'hand-over': 'handed over',
};
