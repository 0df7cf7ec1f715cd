/** A guide that cuts with one template, for the examples of rules; `shape` is what stands in it. */
export function templateExample(shape: string): string {
  return `## Parts {#parts}

::wear[Eye protection]{#eye-protection}
::part[Cover]{#cover}
::tool[Saw]{#saw}

:::cut-template[Notch]{#notch panel=cover face=outside}
::datum[Centreline]{axis=vertical at="0 mm"}
::datum[Lower edge]{axis=horizontal at="0 mm"}
${shape}
:::

## Work {#work}

::step[Try it]{#try}

Hold the bracket up to the cover.

::step[Cut]{#do}

:::warning[Flying chips]
Chips can injure an eye. Wear :wear[eye-protection].
:::

Lay the :cut-template[notch] on the :part[cover] and :cut[notch]{with=saw trial=try}.
`;
}

/** An outline that can be cut. */
export const outlineExample = '::outline{points="-62,0 62,0 62,38 -62,38" unit=mm}';
