import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const fastenerTypeUnknown: RuleCard = {
  code: 'fastener-type-unknown',
  severity: 'error',
  title: 'A fastener names a type that the shop does not list',
  why: 'The type says which tool fits and whether the fastener can be used again. A misspelt type loses both.',
  bad: {
    'fasteners.yaml': 'push-clip: {name: Push clip}\n',
    'example/guide.md': `## Parts {#parts}

::part[Cover]{#cover}
::fastener[Clip]{#clip type=push-clop holds=cover}

## Work {#work}

::step[Off and on]{#both}

:remove[clip] and :remove[cover]. Look behind it. :refit[cover] and :refit[clip].
`,
  },
  good: {
    'fasteners.yaml': 'push-clip: {name: Push clip}\n',
    'example/guide.md': `## Parts {#parts}

::part[Cover]{#cover}
::fastener[Clip]{#clip type=push-clip holds=cover}

## Work {#work}

::step[Off and on]{#both}

:remove[clip] and :remove[cover]. Look behind it. :refit[cover] and :refit[clip].
`,
  },
};
