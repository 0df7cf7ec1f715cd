import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const reverseUnsound: RuleCard = {
  code: 'reverse-unsound',
  severity: 'error',
  title: 'A step cannot be undone by itself',
  why: 'Undoing is sound where everything goes back as it came off. What is cut, bonded or used once does not, so the author writes that step.',
  bad: `## Parts {#parts}

::part[Cover]{#cover}
::fastener[Cover clip]{#clip holds=cover reuse=no}

## Strip down {#strip-down}

::step[Take off the cover]{#cover-off}

:remove[clip] and :remove[cover].

## Refit {#refit}

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
