import type { Guide } from '../model/guide.ts';
import type { Plan, PlannedStep } from '../model/job.ts';
import type { Build } from '../model/when.ts';
import { gatherList } from './gather.ts';
import { messagesOf } from './messages.ts';
import { stepTime, timeTotals } from './time.ts';
import { isDone, usesOfStep } from './uses.ts';

/** What a plan says apart from what is played in the dry run. */
export type PaperPlan = Omit<Plan, 'index' | 'builds' | 'statement'>;

/** The job as it is for one build, and for all that read like it. */
export function planFor(guide: Guide, build: Build): PaperPlan {
  const done = guide.sections.flatMap((section) =>
    section.steps.filter((step) => isDone(step, build)).map((step) => ({ section: section.id, step })),
  );
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
        tools: ofKind('tool'),
        wear: ofKind('wear'),
      };
    }),
    gather: gatherList(guide, build),
    messages: messagesOf(guide, build),
    time: timeTotals(done),
  };
}
