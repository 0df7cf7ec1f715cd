/** How many parts a generated guide takes off and puts back; two steps each. */
const partsPerGuide = 12;

/** A workspace of sound guides of some 25 steps, all different, the same at every call. */
export function generatedWorkspace(guides: number): { readonly [path: string]: string } {
  const files: Record<string, string> = {
    'shop.yaml': 'name: Generated Fitting\ncrew: 2\n',
    'tools.yaml':
      'trim-lever: {name: Trim lever}\nbit-t15: {name: T15 bit, drive: T15}\nsocket-10: {name: 10 mm socket, drive: hex 10}\n',
    'platforms/generated-van.md':
      '---\ntitle: Generated van\noptions:\n  fog: Front fog lamps\n---\n\nA van.\n',
  };
  for (let number = 1; number <= guides; number += 1) {
    files[`generated-${number}/guide.md`] = generatedGuide(number);
  }
  return files;
}

function generatedGuide(number: number): string {
  const parts = Array.from({ length: partsPerGuide }, (_, index) => `${index + 1}`);
  return [
    frontMatter(number),
    '## What you need {#need}\n',
    '::none{of=wear}\n::tool{#trim-lever}\n::tool{#bit-t15}\n::none{of=supplies}\n::none{of=kit}\n::none{of=conditions}\n',
    parts.map((part) => declarations(part, number)).join('\n'),
    '\n## Strip down {#strip-down}\n',
    parts.map((part) => stripStep(part, number)).join('\n'),
    '## Refit {#refit}\n',
    parts
      .reverse()
      .map((part) => refitStep(part, number))
      .join('\n'),
    '## Prove it {#prove}\n\n:::prove[Lamps]\n- Headlamps aim as before\n:::\n',
  ].join('\n');
}

function frontMatter(number: number): string {
  return `---\ntitle: Generated job ${number}\nplatform: generated-van\nrevision: ${number}\n---\n`;
}

function declarations(part: string, number: number): string {
  const count = ((Number(part) + number) % 4) + 1;
  return [
    `::part[Panel ${part}]{#panel-${part}}`,
    `::fastener[Screw ${part}]{#screw-${part} drive=T15 count=${count} side=each holds=panel-${part}}`,
    `::connector[Plug ${part}]{#plug-${part} on=panel-${part}}`,
  ].join('\n');
}

function stripStep(part: string, number: number): string {
  return `::step[Draw panel ${part}]{#draw-${part} time="${Number(part)}..${Number(part) + 4} min"}

:::caution[Sharp edge ${number}, panel ${part}]
The lip of the panel can cut a finger. Feel along the fold first, at 10:30 on the clock and **not** below it.
:::

Work the :tool[trim-lever] behind the edge of panel ${part}. :remove[screw-${part}]{with=bit-t15}.
Then :disconnect[plug-${part}] and :remove[panel-${part}].

- Keep the screws in a bag.
- Look at the *seal* for cracks, as in [the refit](#refit).
`;
}

function refitStep(part: string, number: number): string {
  return `::step[Set panel ${part} back]{#set-${part} time="${Number(part)} min"}

Look at job ${number} once more. :refit[panel-${part}] and :connect[plug-${part}].
Then :refit[screw-${part}]{with=bit-t15}.
`;
}
