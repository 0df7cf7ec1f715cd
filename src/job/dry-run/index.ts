import type { Guide } from '../../model/guide.ts';
import type { BenchState } from '../../model/job.ts';
import type { Violation } from '../../model/violation.ts';
import type { Outcomes } from '../outcomes.ts';
import { openDiary } from './bench.ts';
import { gatherViolations } from './gather-violations.ts';
import { play } from './play.ts';
import { scriptOf } from './script.ts';
import { type Sheets, sheetsOf } from './sheets.ts';

/** What playing a guide gives the people in the bay, for builds that read alike. */
export interface Played extends Sheets {
  /** The bench when each step is done, by the step's id. */
  readonly benches: ReadonlyMap<string, BenchState>;
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
  // Builds that read alike are played as one.
  const builds = groups.map(([first = {}]) => first);
  const script = scriptOf(guide, builds);
  const diary = openDiary(builds.length);
  const ledger = play(script, diary.onlooker);
  const sheets = sheetsOf(diary.changes, ledger);
  return {
    violations: script.sound ? gatherViolations(ledger, groups, deciding) : [],
    played: diary.benches.map((benches, plan) => ({ benches, ...sheets(plan) })),
  };
}
