import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const patternShapeless: RuleCard = {
  code: 'pattern-shapeless',
  severity: 'error',
  title: 'A hole pattern has no line and no circle',
  why: 'Holes are spaced along a line between two points, or on a circle about a centre.',
  bad: `## Parts {#parts}

::wear[Eye protection]{#eye-protection}
::part[Cover]{#cover}
::tool[Saw]{#saw}

:::cut-template[Notch]{#notch panel=cover face=outside}
::datum[Centreline]{axis=vertical at="0 mm"}
::datum[Lower edge]{axis=horizontal at="0 mm"}
::pattern[Vent holes]{count=6 diameter="5 mm"}
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
::pattern[Vent holes]{count=6 diameter="5 mm" along="0,20 100,20" unit=mm}
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
