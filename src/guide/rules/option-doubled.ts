import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const optionDoubled: RuleCard = {
  code: 'option-doubled',
  severity: 'error',
  title: 'An option is declared by the platform and by the guide',
  why: 'Two declarations of one option can name it differently, and the technician would be asked the same thing twice.',
  bad: `---
title: Example guide
platform: example-van
options:
  fog: Front fog lamps
---

## Without {#without}

::none{of=wear}
::none{of=tools}
::none{of=supplies}
::none{of=kit}
::none{of=conditions}

## Work {#work}

::step[Look around]{#look}

Look :where[behind the lamps]{when=fog}.`,
  good: `---
title: Example guide
platform: example-van
---

## Without {#without}

::none{of=wear}
::none{of=tools}
::none{of=supplies}
::none{of=kit}
::none{of=conditions}

## Work {#work}

::step[Look around]{#look}

Look :where[behind the lamps]{when=fog}.`,
};
