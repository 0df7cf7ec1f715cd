import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const reverseItself: RuleCard = {
  code: 'reverse-itself',
  severity: 'error',
  title: 'A section reverses itself',
  why: 'A refit that stands in the strip-down that it undoes has no beginning.',
  bad: `## Parts {#parts}

::part[Cover]{#cover}
::fastener[Cover clip]{#clip holds=cover}

## Strip down {#strip-down}

::step[Take off the cover]{#cover-off}

:remove[clip] and :remove[cover].

::reverse{of=strip-down}
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
