import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const reverseDoubled: RuleCard = {
  code: 'reverse-doubled',
  severity: 'error',
  title: 'A step is reversed twice',
  why: 'What is refitted twice was taken off once.',
  bad: `## Parts {#parts}

::part[Cover]{#cover}
::fastener[Cover clip]{#clip holds=cover}

## Strip down {#strip-down}

::step[Take off the cover]{#cover-off}

:remove[clip] and :remove[cover].

## Refit {#refit}

::reverse{of=strip-down}

## Refit again {#again}

::reverse{of=cover-off}
`,
  good: `## Parts {#parts}

::part[Cover]{#cover}
::fastener[Cover clip]{#clip holds=cover}

## Strip down {#strip-down}

::step[Take off the cover]{#cover-off}

:remove[clip] and :remove[cover].

## Refit {#refit}

::reverse{of=strip-down}
`,
};
