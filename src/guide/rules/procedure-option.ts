import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const procedureOption: RuleCard = {
  code: 'procedure-option',
  severity: 'error',
  costs: 'procedure',
  title: 'The options of a procedure and of the guide do not meet',
  why: 'A procedure asks about its own options; the guide says which of its options stands for each of them.',
  bad: {
    'procedures/cover.md': `---
title: Cover off
options:
  lamps: Fog lamps
---

::step[Look at the cover]{#look-cover}

Look :where[behind the lamps]{when=lamps}.
`,
    'example/guide.md': `## Strip down {#strip-down}

::procedure{of=cover}
`,
  },
  good: {
    'procedures/cover.md': `---
title: Cover off
options:
  lamps: Fog lamps
---

::step[Look at the cover]{#look-cover}

Look :where[behind the lamps]{when=lamps}.
`,
    'example/guide.md': `## Strip down {#strip-down}

::procedure{of=cover options="lamps=fog"}
`,
  },
};
