import type { Guide } from '../../model/guide.ts';
import type { Bag, BenchState, CountLine, FastenerLine } from '../../model/job.ts';
import type { Violation } from '../../model/violation.ts';
import type { Build } from '../../model/when.ts';
import type { Outcomes } from '../outcomes.ts';
import { openDiary } from './bench.ts';
import { gatherViolations } from './gather-violations.ts';
import { play } from './play.ts';
import { scriptOf, truthOf } from './script.ts';
import { bagsOf, countSheetOf, fastenersOf } from './sheets.ts';

/** What playing a guide gives the people in the bay, for builds that read alike. */
export interface Played {
  /** The bench when each step is done, by the step's id. */
  readonly benches: ReadonlyMap<string, BenchState>;
  readonly bags: readonly Bag[];
  readonly countSheet: readonly CountLine[];
  readonly fasteners: readonly FastenerLine[];
}

/** The dry run of a guide: its faults, and its sheets for each group of builds. */
export interface DryRun {
  readonly violations: readonly Violation[];
  readonly played: readonly Played[];
}

/**
 * Plays a guide for every build and each side. Where an action could not be understood, which another rule
 * tells, nothing is held against the guide, since what follows from it is not known.
 */
export function dryRun(guide: Guide, { deciding, groups }: Outcomes): DryRun {
  const script = scriptOf(guide);
  const plays = groups.map((builds) => {
    const diary = openDiary();
    const ledger = play(script, truthOf(script, builds[0] ?? ({} as Build)), diary.onlooker);
    return { builds, diary, ledger, faults: ledger.faults };
  });
  return {
    violations: script.sound ? gatherViolations(plays, deciding) : [],
    played: plays.map(({ diary, ledger }) => ({
      benches: diary.benches,
      bags: bagsOf(diary.changes, ledger),
      countSheet: countSheetOf(diary.changes, ledger),
      fasteners: fastenersOf(diary.changes, ledger),
    })),
  };
}
