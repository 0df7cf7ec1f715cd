import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { buildKey, stepsOf } from '../../job/index.ts';
import type { Rule } from '../rule.ts';

const words = (when: string) => `::part[Cover]{#cover}
::inspection[Thread]{#thread outcomes="clean worn-out"}

::step[Look at the thread]{#look}

:remove[cover] and :inspect[thread].

::step[Ask the owner]{#ask ${when}stop}

Tell the owner what a repair costs.

::step[Put the cover back]{#back}

:refit[cover].
`;

const card: RuleCard = {
  code: 'stop-always',
  severity: 'error',
  title: 'The job ends here whatever is found',
  why: 'A step marked `stop` ends the job for what an inspection found. Where nothing is found first, the steps after it are never done, and nobody sees what is still off the vehicle.',
  bad: words(''),
  good: words('when="thread is worn-out" '),
};

/** A step that ends the job does so for some of what may be found, in each build in which it is done. */
export const stopAlways: Rule = {
  card,
  run: ({ guide, job }, report) => {
    const options = guide.builds.options.filter(({ id }) => guide.items.get(id)?.kind !== 'inspection');
    const ends = job.plans.flatMap(({ steps, builds }) =>
      builds.map((build) => ({ key: buildKey(build, options), last: steps.at(-1)?.id })),
    );
    for (const step of stepsOf(guide)) {
      if (!step.stop) continue;
      const others = new Set(ends.flatMap(({ key, last }) => (last === step.id ? [] : [key])));
      if (!ends.some(({ key, last }) => last === step.id && !others.has(key))) continue;
      const message =
        'the job ends here whatever is found; let the step hang on what an inspection finds, as in when="thread is worn-out"';
      report(finding(card, step.at, message));
    }
  },
};
