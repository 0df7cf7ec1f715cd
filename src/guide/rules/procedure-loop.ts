import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const procedureLoop: RuleCard = {
  code: 'procedure-loop',
  severity: 'error',
  title: 'A procedure places itself',
  why: 'A job that contains itself has no end.',
  bad: {
    'procedures/cover.md': `---
title: Cover off
---

::procedure{of=cover}
`,
  },
  good: {
    'procedures/cover.md': `---
title: Cover off
---

::step[Look at the cover]{#look-cover}

Look at it.
`,
  },
};
