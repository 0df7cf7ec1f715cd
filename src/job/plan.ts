import type { Guide } from '../model/guide.ts';
import type { Plan, PlannedStep } from '../model/job.ts';
import type { Build } from '../model/when.ts';
import { base } from '../units/quantity.ts';
import { usesOfStep } from './actions/uses.ts';
import type { Played } from './dry-run/index.ts';
import { gatherList } from './gather.ts';
import { messagesOf } from './messages.ts';
import { freedomOf, precedenceOf, withoutDetours } from './precedence.ts';
import { workOf } from './proofs.ts';
import { type Solver, schedulesOf } from './schedule/index.ts';
import { stepTime, timeTotals } from './time.ts';

/** What a plan says apart from its builds and the sheets of the dry run. */
type PaperPlan = Pick<Plan, 'steps' | 'gather' | 'messages' | 'time' | 'schedules'>;

/** A vehicle on which nothing has been done. */
const untouched: PlannedStep['bench'] = {
  off: [],
  apart: [],
  loose: [],
  aside: [],
  on: [],
  holds: [],
  movement: 'not stated',
};

/** The job as it is for one build, and for all that read like it. */
export function planFor(
  guide: Guide,
  build: Build,
  benches: Played['benches'],
  crew: number,
  solver: Solver,
): PaperPlan {
  const work = workOf(guide, build);
  const done = work.filter(({ isProof }) => !isProof);
  const precedence = precedenceOf(guide, build, done);
  const direct = withoutDetours(precedence);
  // Without proofs that take time, the work is the steps.
  const ofWork = work.length === done.length ? precedence : precedenceOf(guide, build, work);
  const schedules = schedulesOf(guide, build, work, crew, ofWork, solver);
  return {
    steps: done.map(({ section, step }, index): PlannedStep => {
      const used = [...new Set(usesOfStep(step, guide, build).map((use) => use.item))];
      const ofKind = (kind: 'tool' | 'wear') => used.filter((id) => guide.items.get(id)?.kind === kind);
      return {
        id: step.id,
        section,
        number: index + 1,
        time: stepTime(step),
        wait: step.wait?.value ?? 0,
        people: step.people,
        after: [...(direct[index] ?? [])].map(([before, wait]) => ({
          step: done[before]?.step.id ?? '',
          wait: base<'time'>(wait),
        })),
        free: freedomOf(index, done, precedence),
        tools: ofKind('tool'),
        wear: ofKind('wear'),
        bench: benches.get(step.id) ?? untouched,
      };
    }),
    gather: gatherList(guide, build, schedules),
    messages: messagesOf(guide, build),
    time: timeTotals(work),
    schedules,
  };
}
