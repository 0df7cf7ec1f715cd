import type { RuleCard } from '../../diagnostics/rule-card.ts';

const drawing =
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 90 60"><path d="M10 10h70v40z" fill="#fff" stroke="#000"/></svg>\n';

const platform = (picture: string) => `---
title: Example van
---

::part[Battery]{#battery${picture}}
`;

const guide = `:::figure[Where the battery stands]{of=battery}
:::

::step[Look around]{#look}

Look behind the edge.
`;

export const figureUnpictured: RuleCard = {
  code: 'figure-unpictured',
  severity: 'error',
  title: 'A figure of a thing that has no picture of its own',
  why: 'With `of` a text that several vehicles share shows what each of them looks like. Where the platform has no picture, the technician would see an empty frame.',
  bad: { 'platforms/example-van.md': platform(''), 'example/guide.md': guide },
  good: {
    'platforms/example-van.md': platform(' picture=battery.svg alt="Battery beside the wing, from above"'),
    'platforms/battery.svg': drawing,
    'example/guide.md': guide,
  },
};
