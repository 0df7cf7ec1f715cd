import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const conditionUnreadable: RuleCard = {
  code: 'condition-unreadable',
  severity: 'error',
  costs: 'condition',
  title: 'A combination of options in the front matter cannot be read',
  why: 'What a platform rules out, or the `when` of a guide leaves to others, is left out of every check. A combination that cannot be read would be checked for nothing, or not at all.',
  bad: {
    'platforms/example-van.md': `---
title: Example van
options:
  fog: Front fog lamps
  tow: Tow bar
impossible: ["fog and (tow"]
---

A van.
`,
  },
  good: {
    'platforms/example-van.md': `---
title: Example van
options:
  fog: Front fog lamps
  tow: Tow bar
impossible: ["fog and tow"]
---

A van.
`,
  },
};
