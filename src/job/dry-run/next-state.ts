import type { Verb } from '../../model/inline.ts';
import type { StateName } from '../../model/violation.ts';
import type { Lot } from './lot.ts';

/** Fasteners that are in, tight or not, and parts that are in place. */
export function isInPlace(state: StateName): boolean {
  return state === 'in place' || state === 'tight' || state === 'loosened' || state === 'started';
}

/** What fills the place of the thing that it replaces: in place, or a supply that is on. */
export function fillsPlace(state: StateName): boolean {
  return isInPlace(state) || state === 'on';
}

/** Whether a part comes off, and goes on, under a fastener that is only loosened. */
export function slidesUnder({ thing }: Lot): boolean {
  return thing?.freeWhenLoosened ?? false;
}

/** The states in which a fastener holds its part; one that frees it when loosened need not come out. */
export function holdingOf(lot: Lot): (state: StateName) => boolean {
  const frees = slidesUnder(lot);
  return (state) => fillsPlace(state) && !(frees && state === 'loosened');
}

/** What has left the job for good. */
export function isGone(state: StateName): boolean {
  return state === 'discarded' || state === 'given to the owner';
}

/** The state that an action brings about, whether or not it was right to do it. */
export function nextState(verb: Verb, lot: Lot, before: StateName, loosenedFirst: boolean): StateName {
  switch (verb) {
    case 'remove':
      return 'off';
    case 'refit':
    case 'fit':
    case 'bond':
      return fittedState(lot, loosenedFirst);
    case 'start':
      return 'started';
    case 'tighten':
      return 'tight';
    case 'loosen':
      return 'loosened';
    case 'disconnect':
      return 'apart';
    case 'connect':
      return 'mated';
    case 'move-aside':
      return 'aside';
    case 'move-back':
      return 'in place';
    case 'apply':
      return 'on';
    case 'take-off':
      return 'not on';
    case 'set':
      return lot.thing?.kind === 'setting' ? 'set' : 'holds';
    case 'clear':
      return lot.thing?.kind === 'setting' ? 'as found' : 'does not hold';
    case 'clean':
    case 'route':
      return before;
    case 'measure':
    case 'inspect':
    case 'cut':
    case 'drill':
      return 'done';
    case 'discard':
      return 'discarded';
    case 'hand-over':
      return 'given to the owner';
  }
}

/** A fastener with a torque, or one that was loosened before it came off, is only started by going in. */
function fittedState({ thing }: Lot, loosenedFirst: boolean): StateName {
  if (!thing?.fixing) return 'in place';
  return thing.torqued || loosenedFirst ? 'started' : 'tight';
}
