import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const procedureUnknown: RuleCard = {
  code: 'procedure-unknown',
  severity: 'error',
  costs: 'procedure',
  title: 'A procedure is placed that the workspace does not have',
  why: 'Without the procedure its steps are missing from the job, and the technician meets a cover that is still on.',
  bad: `## Strip down {#strip-down}

::procedure{of=front-cover-of}`,
  good: {
    'procedures/front-cover-off.md': `---
title: Front cover off
---

::step[Look at the cover]{#look-cover}

Look at it.
`,
    'example/guide.md': `## Strip down {#strip-down}

::procedure{of=front-cover-off}
`,
  },
};
