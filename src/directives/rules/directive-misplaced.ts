import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const misplaced: RuleCard = {
  code: 'directive-misplaced',
  severity: 'error',
  title: 'Something stands where it means nothing',
  why: 'What is not read is lost in silence: a hole outside its template is never drawn, an action outside a step is never counted.',
  bad: `::hole[Bolt hole]{centre="0,40" unit=mm diameter="9 mm"}

::step[Look]{#look}

Look at it.
`,
  good: `::step[Look]{#look}

Look at it.
`,
};
