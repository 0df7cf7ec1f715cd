import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const coordinatesUnitless: RuleCard = {
  code: 'coordinates-unitless',
  severity: 'error',
  title: 'Coordinates stand without a unit',
  why: 'A drawing read in the wrong unit is out by a factor of 25, and the panel with it.',
  bad: `## Parts {#parts}

::wear[Eye protection]{#eye-protection}
::part[Cover]{#cover}
::tool[Saw]{#saw}

:::cut-template[Notch]{#notch panel=cover face=outside}
::datum[Centreline]{axis=vertical at="0 mm"}
::datum[Lower edge]{axis=horizontal at="0 mm"}
::outline{points="-62,0 62,0 62,38 -62,38"}
:::

## Work {#work}

::step[Try it]{#try}

Hold the bracket up to the cover.

::step[Cut]{#do}

:::warning[Flying chips]
Chips can injure an eye. Wear :wear[eye-protection].
:::

Lay the :cut-template[notch] on the :part[cover] and :cut[notch]{with=saw trial=try}.
`,
  good: `## Parts {#parts}

::wear[Eye protection]{#eye-protection}
::part[Cover]{#cover}
::tool[Saw]{#saw}

:::cut-template[Notch]{#notch panel=cover face=outside}
::datum[Centreline]{axis=vertical at="0 mm"}
::datum[Lower edge]{axis=horizontal at="0 mm"}
::outline{points="-62,0 62,0 62,38 -62,38" unit=mm}
:::

## Work {#work}

::step[Try it]{#try}

Hold the bracket up to the cover.

::step[Cut]{#do}

:::warning[Flying chips]
Chips can injure an eye. Wear :wear[eye-protection].
:::

Lay the :cut-template[notch] on the :part[cover] and :cut[notch]{with=saw trial=try}.
`,
};
