import type { StateName } from '../../model/violation.ts';
import type { Lot } from './lot.ts';
import { noPlan, type PlanSet } from './plan-set.ts';
import type { Change } from './play.ts';
import type { Script } from './script.ts';

/** How every lot stands, in which plans, while what was played is gone through once more. */
export interface Standing {
  /** The plans in which a lot is in a state of some kind. */
  readonly where: (lot: Lot, isSuch: (state: StateName) => boolean) => PlanSet;
  readonly change: (change: Change) => void;
}

/** Everything as it is before the work begins. */
export function standingOf(script: Script): Standing {
  const states = script.lots.map(
    (lot) => new Map<StateName, PlanSet>([[lot.start, script.lotSets[lot.index] ?? noPlan]]),
  );
  return {
    where: (lot, isSuch) =>
      [...(states[lot.index] ?? [])].reduce(
        (found, [state, set]) => (isSuch(state) ? found | set : found),
        noPlan,
      ),
    change: ({ lot, before, after, set }) => {
      const own = states[lot.index];
      own?.set(before, (own.get(before) ?? noPlan) & ~set);
      own?.set(after, (own.get(after) ?? noPlan) | set);
    },
  };
}
