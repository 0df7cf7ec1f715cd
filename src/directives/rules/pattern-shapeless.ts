import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const patternShapeless: RuleCard = {
  code: 'pattern-shapeless',
  severity: 'error',
  title: 'A hole pattern has no line and no circle',
  why: 'Holes are spaced along a line between two points, or on a circle about a centre.',
  bad: `:::cut-template[Vents]{#vents panel=cover face=outside}
::pattern[Vent holes]{count=6 diameter="5 mm"}
:::`,
  good: `:::cut-template[Vents]{#vents panel=cover face=outside}
::pattern[Vent holes]{count=6 diameter="5 mm" along="0,0 100,0" unit=mm}
:::`,
};
