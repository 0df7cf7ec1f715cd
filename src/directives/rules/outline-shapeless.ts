import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const outlineShapeless: RuleCard = {
  code: 'outline-shapeless',
  severity: 'error',
  title: 'An outline has no shape',
  why: 'An outline needs its points, or the drawing that the maker of the accessory supplies.',
  bad: `## Parts {#parts}

::wear[Eye protection]{#eye-protection}
::part[Cover]{#cover}
::tool[Saw]{#saw}

:::cut-template[Notch]{#notch panel=cover face=outside}
::datum[Centreline]{axis=vertical at="0 mm"}
::datum[Lower edge]{axis=horizontal at="0 mm"}
::outline{unit=mm}
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
