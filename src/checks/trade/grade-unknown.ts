import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { isFixing } from '../../job/index.ts';
import { gradesFor, strengthOf } from '../../trade/strength.ts';
import type { Rule } from '../rule.ts';

const bolt = (grade: string) => `::tool[13 mm socket]{#socket-13 drive="hex 13"}
::tool[Torque wrench, 10–60 N·m]{#torque-60 range="10..60 N·m"}
::fastener[Bracket bolt]{#bracket-bolt thread=M8x1.25 grade="${grade}" drive="hex 13" torque="18 N·m"}

::step[Turn the bolt]{#bolt}

:loosen[bracket-bolt]{with=socket-13}.
:tighten[bracket-bolt]{with="torque-60 socket-13"}.`;

const card: RuleCard = {
  code: 'grade-unknown',
  severity: 'warning',
  title: 'A grade that no table knows',
  why: 'A stated torque is held against what a fastener of its thread and grade can bear. Without a grade that the tables know this is not done, and a slip in the torque would go unseen.',
  bad: bolt('8,8'),
  good: bolt('8.8'),
};

/** The grade of each fastener with a thread and a torque is one by which the torque can be judged. */
export const gradeUnknown: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const item of guide.items.values()) {
      if (!isFixing(item) || !item.torque || !item.thread || !item.grade) continue;
      const { value: thread } = item.thread;
      const { value: grade, at } = item.grade;
      if (strengthOf(thread, grade)) continue;
      const known = gradesFor(thread.form);
      const message = `no table knows the grade "${grade}" on ${thread.form === 'metric' ? 'a metric' : 'an inch'} thread, so the torque of the ${item.noun.singular} is not checked`;
      const notes = [{ message: `the tables have ${known.join(', ')}` }];
      // Only the comma is mended: which grade the fastener has, nobody can guess.
      const likely = grade.replace(',', '.');
      const suggestion = known.includes(likely) ? { at, text: likely } : undefined;
      report(finding(card, at, message, { notes, suggestion }));
    }
  },
};
