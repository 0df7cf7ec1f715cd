import type { Rule } from '../rule.ts';
import { actionImpossible } from './action-impossible.ts';
import { branchDead } from './branch-dead.ts';
import { buildsNone } from './builds-none.ts';
import { buildsTooMany } from './builds-too-many.ts';
import { choiceGap } from './choice-gap.ts';
import { choiceOverlap } from './choice-overlap.ts';
import { inspectionAbsent } from './inspection-absent.ts';
import { messageNarrower } from './message-narrower.ts';
import { optionUnknown } from './option-unknown.ts';
import { outcomesTooMany } from './outcomes-too-many.ts';
import { referenceDropped } from './reference-dropped.ts';
import { stopAlways } from './stop-always.ts';

/** The rules of options and builds. */
export const buildRules: readonly Rule[] = [
  buildsNone,
  buildsTooMany,
  optionUnknown,
  outcomesTooMany,
  ...[
    actionImpossible,
    branchDead,
    choiceGap,
    choiceOverlap,
    inspectionAbsent,
    messageNarrower,
    referenceDropped,
    stopAlways,
  ].map(amongAllBuilds),
];

/** A rule that compares builds says nothing where they could not all be made: that has been told. */
function amongAllBuilds({ card, run }: Rule): Rule {
  return {
    card,
    run: (subject, report) => {
      if (subject.job.buildProblem === null) run(subject, report);
    },
  };
}
