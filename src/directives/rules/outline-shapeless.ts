import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const outlineShapeless: RuleCard = {
  code: 'outline-shapeless',
  severity: 'error',
  title: 'An outline has no shape',
  why: 'An outline needs its points, or the drawing that the maker of the accessory supplies.',
  bad: `:::cut-template[Notch]{#notch panel=cover face=outside}
::outline{unit=mm}
:::`,
  good: `:::cut-template[Notch]{#notch panel=cover face=outside}
::outline{points="-62,0 62,0 62,38 -62,38" unit=mm}
:::`,
};
