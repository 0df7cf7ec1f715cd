import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const coordinatesUnitless: RuleCard = {
  code: 'coordinates-unitless',
  severity: 'error',
  title: 'Coordinates stand without a unit',
  why: 'A drawing read in the wrong unit is out by a factor of 25, and the panel with it.',
  bad: `:::cut-template[Notch]{#notch panel=cover face=outside}
::outline{points="-62,0 62,0 62,38 -62,38"}
:::`,
  good: `:::cut-template[Notch]{#notch panel=cover face=outside}
::outline{points="-62,0 62,0 62,38 -62,38" unit=mm}
:::`,
};
