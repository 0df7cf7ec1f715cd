/** How many parts a guide takes off; each comes back by reversal, and one step in between fits the new part. */
const parts = 12;

/**
 * A workspace of sound guides, the same at every call: 25 steps each, 12 of them the reverse of 12, and about 9 kB
 * of text. No two guides share a paragraph. One in twenty has a cut template of one sheet, and one in a hundred
 * one of several; no guide has a raster picture.
 */
export function corpus(guides: number): ReadonlyMap<string, string> {
  const files = new Map(Object.entries(lists));
  for (let number = 1; number <= guides; number += 1) files.set(`job-${number}/guide.md`, guideText(number));
  return files;
}

/** A workspace of one guide with a single cut template, which fills 16 sheets of A4. */
export function templateOfSixteenSheets(): ReadonlyMap<string, string> {
  const files = new Map(Object.entries(lists));
  return files.set('job-1/guide.md', guideText(1, sixteen));
}

const lists: Readonly<Record<string, string>> = {
  'shop.yaml': 'name: Bench Fitting\ncrew: 2\npapers: [A4, Letter]\n',
  'fasteners.yaml': `panel-screw: {name: Panel screw, drive: T25}
flange-bolt: {name: Flange bolt, drive: hex 10}
`,
  'tools.yaml': `trim-lever: {name: Trim lever, drive: pull-out}
bit-driver: {name: "Bit driver, 1/4 in hexagon"}
bit-t25: {name: T25 bit, drive: T25}
ratchet: {name: "Ratchet, 1/4 in square"}
socket-10: {name: 10 mm socket, drive: hex 10}
torque-20: {name: "Torque wrench, 2–20 N·m", range: 2..20 N·m, length: 190 mm}
rotary-cutter: {name: "Rotary cutter, 6 mm burr", cutter-radius: 3 mm}
steel-rule: {name: "Steel rule, 300 mm"}
paint-pen: {name: Paint pen}
eye-protection: {name: Eye protection, wear: yes}
gloves: {name: Gloves, wear: yes}
`,
  'platforms/bench-van.md': `---
title: Bench van
options:
  fog: Front fog lamps
---

A van that only the bench knows.
`,
};

interface Opening {
  readonly width: number;
  readonly height: number;
}

/** The opening of the template of sixteen sheets, in millimetres. */
export const sixteen: Opening = { width: 600, height: 900 };

function openingOf(number: number): Opening | null {
  if (number % 100 === 50) return { width: 300 + (number % 7) * 10, height: 340 };
  return number % 20 === 0 ? { width: 60 + (number % 9) * 4, height: 40 + (number % 7) * 2 } : null;
}

function guideText(number: number, opening = openingOf(number)): string {
  const say = speaker(number);
  const all = Array.from({ length: parts }, (_, index) => index + 1);
  return `---
title: "Job ${number}: ${say.thing()} behind the ${say.place()}"
platform: bench-van
revision: ${(number % 9) + 1}
---

${say.looks()} ${say.looks()}[^data]

[^data]: The figures of job ${number} are made up. On a vehicle the maker's data come first.

| what | where | apart |
|---|---|---:|
${all
  .slice(0, 4)
  .map(() => `| ${say.thing()} | ${say.place()} | ${say.distance()} |`)
  .join('\n')}

## What you need {#need}

::wear{#eye-protection}
::wear{#gloves}
::tool{#trim-lever}
::tool{#bit-driver}
::tool{#bit-t25}
::tool{#ratchet}
::tool{#socket-10}
::tool{#torque-20}
${opening ? '::tool{#rotary-cutter}\n::tool{#steel-rule}\n::tool{#paint-pen}\n' : ''}::none{of=supplies}
::kit[Bracket ${number}]{#bracket}
::none{of=conditions}

## What comes off {#off}

${all.map((part) => declarations(part, number)).join('\n')}

## Strip down {#strip-down}

${all.map((part) => stripStep(part, number, say)).join('\n')}
## Fit {#fit}
${opening ? templateText(opening) : ''}
${fitStep(number, opening, say)}
## Refit {#refit}

::reverse{of=strip-down}

## Prove it {#prove}

:::prove[Job ${number}]
- ${say.looks()}
- No warning lamp stays on
:::
`;
}

function declarations(part: number, number: number): string {
  const count = ((part + number) % 4) + 2;
  const fastener =
    part % 2 === 1
      ? `::fastener[Screw ${part}]{#held-${part} type=panel-screw count=${count} side=each holds=panel-${part}}`
      : `::fastener[Bolt ${part}]{#held-${part} type=flange-bolt thread=M6x1 grade=8.8 torque="8 N·m" count=${count} holds=panel-${part} with="torque-20 socket-10"}`;
  const fitted = part % 5 === 0 ? ' when=fog' : '';
  return `::part[Panel ${part}]{#panel-${part}}\n${fastener}\n::connector[Plug ${part}]{#plug-${part} on=panel-${part}${fitted}}`;
}

function stripStep(part: number, number: number, say: Speaker): string {
  const tools = part % 2 === 1 ? 'bit-driver bit-t25' : 'ratchet socket-10';
  const least = (part % 5) + 2;
  const unplug =
    part % 5 === 0
      ? `:where[:disconnect[plug-${part}] first.]{when=fog}`
      : `:disconnect[plug-${part}] first.`;
  const mind =
    part % 3 === 0
      ? `
:::caution[Sharp edge ${number}, panel ${part}]
The lip of the panel can cut a finger. Wear :wear[gloves] and feel along the fold, ${say.distance()} below it.
:::
`
      : '';
  const after =
    part % 4 === 0
      ? `
:::refit-note
Seat the ${say.thing()} first, ${say.distance()} from the ${say.place()}.
:::
`
      : '';
  return `::step[Draw off panel ${part}]{#draw-${part} time="${least}/${least + 2}/${least + 5} min"}
${mind}
${say.looks()}
Work the :tool[trim-lever] behind the **${say.place()}**, and :remove[held-${part}]{with="${tools}"}.
${unplug} Then :remove[panel-${part}].

- ${say.looks()}
- Bag the *hardware* of panel ${part}, as for [the refit](#refit).
${after}`;
}

function fitStep(number: number, opening: Opening | null, say: Speaker): string {
  return `::step[Fit bracket ${number}]{#fit-bracket time="6/9/15 min"}
${
  opening
    ? `
:::warning[Flying chips]
Hot chips can blind an eye. Wear :wear[eye-protection] and cut away from yourself.
:::

Lay the :cut-template[opening] template on its two datums and check its square with the :tool[steel-rule].
Trace it with the :tool[paint-pen], then :cut[opening]{with=rotary-cutter}, 1 mm inside the line.
`
    : `
Wear :wear[eye-protection] while the spring of the bracket is under load.
`
}
${say.looks()} ${say.looks()}
:fit[bracket] by the ${say.place()}, ${say.distance()} from the ${say.thing()}.
`;
}

function templateText({ width, height }: Opening): string {
  const [left, right] = [-width / 2, width / 2];
  return `
:::cut-template[Opening]{#opening panel=panel-1 face=outside}
::datum[Vehicle centreline]{axis=vertical at="0 mm"}
::datum[Lower edge of the panel]{axis=horizontal at="0 mm"}
::outline{points="${left},30 r8 ${right},30 r8 ${right},${30 + height} r8 ${left},${30 + height} r8" unit=mm}
:::
`;
}

interface Speaker {
  readonly thing: () => string;
  readonly place: () => string;
  readonly distance: () => string;
  /** A sentence of some twenty words at most. */
  readonly looks: () => string;
}

/** Words for one guide: drawn from a fixed series that starts with its number, so that guides differ in all. */
function speaker(number: number): Speaker {
  let state = number * 2654435761;
  // Numerical Recipes' linear congruential generator; its upper bits are the random ones.
  const next = (below: number) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
  const pick = (list: readonly string[]) => list[next(list.length)] as string;
  const thing = () => `${pick(shades)} ${pick(things)}`;
  const place = () => `${pick(sides)} ${pick(places)}`;
  const distance = () => `${next(800) + 10} mm`;
  return {
    thing,
    place,
    distance,
    looks: () =>
      `${pick(verbs)} the ${thing()} at the ${place()}, ${distance()} ${pick(directions)} the ${place()}.`,
  };
}

const verbs = ['Find', 'Look for', 'Mind', 'Feel for', 'Shine a lamp at', 'Wipe', 'Free', 'Look at'];
const shades = ['grey', 'black', 'flat', 'short', 'long', 'ribbed', 'round', 'narrow', 'padded', 'double'];
const things = [
  'seal',
  'foam strip',
  'cable tie',
  'rubber stop',
  'guide',
  'loom',
  'bracket',
  'duct',
  'felt pad',
];
const sides = ['upper', 'lower', 'front', 'rear', 'inner', 'outer', 'left', 'right', 'middle'];
const places = [
  'pillar',
  'crossmember',
  'sill',
  'fold',
  'flange',
  'wheel arch',
  'bulkhead',
  'rail',
  'corner',
];
const directions = ['above', 'below', 'ahead of', 'behind', 'inboard of', 'outboard of'];
