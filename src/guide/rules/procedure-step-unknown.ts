import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const procedureStepUnknown: RuleCard = {
  code: 'procedure-step-unknown',
  severity: 'error',
  costs: 'procedure',
  title: 'A step is picked or left out that the procedure does not have',
  why: 'A misspelt step would be left out in silence, or kept when it should go.',
  bad: {
    'procedures/cover.md': `---
title: Cover off
---

::step[Look at the cover]{#look-cover}

Look at it.

::step[Look again]{#look-again}

Look at it again.
`,
    'example/guide.md': `## Strip down {#strip-down}

::procedure{of=cover except=look-agian}
`,
  },
  good: {
    'procedures/cover.md': `---
title: Cover off
---

::step[Look at the cover]{#look-cover}

Look at it.

::step[Look again]{#look-again}

Look at it again.
`,
    'example/guide.md': `## Strip down {#strip-down}

::procedure{of=cover except=look-again}
`,
  },
};
