import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const reverseUnknown: RuleCard = {
  code: 'reverse-unknown',
  severity: 'error',
  title: 'A reversal names steps that do not exist',
  why: 'The refit of a section that is not there would be left out in silence, and the vehicle would leave with its cover off.',
  bad: `## Parts {#parts}

::part[Cover]{#cover}
::fastener[Cover clip]{#clip holds=cover}

## Strip down {#strip-down}

::step[Take off the cover]{#cover-off}

:remove[clip] and :remove[cover].

## Refit {#refit}

::reverse{of=stripdown}
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
