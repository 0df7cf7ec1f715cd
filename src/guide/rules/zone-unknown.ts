import type { RuleCard } from '../../diagnostics/rule-card.ts';

const platform = (zone: string) => `---
title: Example van
---

:::figure[The van]{src=van.svg alt="Side view of a van that faces left"}
:::

::zone[Front end]{#front at="0%,40%,25%,90%"}

::part[Bumper cover]{#cover zone=${zone}}
`;

const van =
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 640 400" width="640" height="400"><path d="M40 90h560v210H40z" fill="#fff" stroke="#000"/></svg>\n';

export const zoneUnknown: RuleCard = {
  code: 'zone-unknown',
  severity: 'error',
  title: 'A zone is named that the platform does not have',
  why: 'The drawing lights up where a step is done. A misspelt zone lights up nothing, and the step cannot be found from the drawing.',
  bad: { 'platforms/example-van.md': platform('frnot'), 'platforms/van.svg': van },
  good: { 'platforms/example-van.md': platform('front'), 'platforms/van.svg': van },
};
