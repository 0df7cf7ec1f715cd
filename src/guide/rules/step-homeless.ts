import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const stepHomeless: RuleCard = {
  code: 'step-homeless',
  severity: 'error',
  title: 'A step stands before the first heading',
  why: 'Every step belongs to a section: that is how it is found, timed and reversed.',
  bad: `---
title: Example guide
platform: example-van
---

::step[Look around]{#look}

Look behind the edge.

## Without {#without}

::none{of=wear}
::none{of=tools}
::none{of=supplies}
::none{of=kit}
::none{of=conditions}
`,
  good: `## Work {#work}

::step[Look around]{#look}

Look behind the edge.`,
};
