import type { Guide } from '../../model/guide.ts';
import type { Action } from '../../model/inline.ts';
import type { BenchState } from '../../model/job.ts';
import type { PlayedAction, Violation } from '../../model/violation.ts';
import type { Span } from '../../source/span.ts';
import { toolsOf } from '../actions/uses.ts';
import { actionsOf, stepsOf } from '../actions/walk.ts';
import type { Outcomes } from '../builds/outcomes.ts';
import { openDiary } from './bench.ts';
import { gatherViolations } from './gather-violations.ts';
import { judgeFixings } from './judge-fixings.ts';
import { play } from './play.ts';
import { scriptOf } from './script.ts';
import { type Sheets, sheetsOf, type ToolsOfMove } from './sheets.ts';

/** What playing a guide gives the people in the bay, for builds that read alike. */
export interface Played extends Sheets {
  /** The bench when each step is done, by the step's id. */
  readonly benches: ReadonlyMap<string, BenchState>;
}

/** The dry run of a guide: its faults, and its sheets for each group of builds. */
interface DryRun {
  readonly violations: readonly Violation[];
  /** Where judging stopped; `null` where all was judged. */
  readonly halt: Span | null;
  readonly played: readonly Played[];
}

/**
 * Plays a guide for every build and each side. From an action that could not be understood, or from the gap where
 * work is missing, nothing is held against the guide, since what follows is not known; other rules tell of those.
 */
export function dryRun(guide: Guide, { deciding, groups }: Outcomes, gap: Span | null = null): DryRun {
  // Builds that read alike are played as one.
  const builds = groups.map(([first = {}]) => first);
  const script = scriptOf(guide, builds, gap);
  const diary = openDiary(builds.length);
  const ledger = play(script, diary.onlooker);
  judgeFixings(diary.changes, ledger);
  const sheets = sheetsOf(diary.changes, ledger, toolsIn(guide));
  return {
    violations: gatherViolations(ledger, groups, deciding, guide),
    halt: script.halt,
    played: diary.benches.map((benches, plan) => ({ benches, ...sheets(plan) })),
  };
}

function toolsIn(guide: Guide): ToolsOfMove {
  const actions = new Map<PlayedAction, Action>(
    stepsOf(guide).flatMap((step) => actionsOf(step).map(({ node }) => [node, node] as const)),
  );
  return ({ action }) => {
    const written = actions.get(action);
    return written ? toolsOf(written, guide.items.get(written.target.value)).map(({ value }) => value) : [];
  };
}
