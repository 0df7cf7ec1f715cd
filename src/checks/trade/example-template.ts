/*
 * Guides for the examples of rules about holes. A hole can be drilled only after a trial fit, with eyes
 * protected, in a panel that is declared, so these say more than the rule that they show.
 */

interface Example {
  readonly diameter: string;
  /** What else the hole says: what it is for. */
  readonly purpose: string;
  readonly declared: string;
  /** The tool of the drilling. */
  readonly bit: string;
  /** What is done once the hole is there. */
  readonly closing: string;
}

/** An M8 bolt through a hole of this diameter. */
export function boltedTemplate(diameter: string): string {
  return drilled({
    diameter,
    purpose: ' for=bolt',
    declared: `${bitOf('bit', diameter)}
::tool[13 mm socket]{#socket-13 drive="hex 13"}
::kit[M8 bolt]{#bolt thread=M8x1.25 grade=8.8 drive="hex 13"}`,
    bit: 'bit',
    closing: ':start[bolt] and :tighten[bolt]{with=socket-13}.',
  });
}

/** An M8 rivet nut in a hole of this diameter. */
export function rivetNutTemplate(diameter: string): string {
  return drilled({
    diameter,
    purpose: ' for=rivet-nut',
    declared: `${bitOf('bit', diameter)}\n::kit[Rivet nut, M8 steel]{#rivet-nut thread=M8x1.25}`,
    bit: 'bit',
    closing: ':fit[rivet-nut].',
  });
}

/** A 9 mm hole that is drilled with one of two bits, `drill-6` or `drill-9`. */
export function drilledTemplate(bit: string): string {
  return drilled({
    diameter: '9 mm',
    purpose: '',
    declared: `${bitOf('drill-6', '6 mm')}\n${bitOf('drill-9', '9 mm')}\n::kit[Grommet]{#grommet}`,
    bit,
    closing: 'Lay the :tool[drill-6] and the :tool[drill-9] back, and :fit[grommet].',
  });
}

function bitOf(id: string, diameter: string): string {
  return `::tool[${diameter} drill bit]{#${id} diameter="${diameter}"}`;
}

function drilled({ diameter, purpose, declared, bit, closing }: Example): string {
  return `::wear[Eye protection]{#eye-protection}
${declared}
::part[Side panel]{#panel}

:::cut-template[Bracket hole]{#template panel=panel face=outside}
::datum[Door edge]{axis=vertical at="0 mm"}
::datum[Sill edge]{axis=horizontal at="0 mm"}
::hole[Bolt hole]{#bolt-hole centre="40,40" diameter="${diameter}"${purpose} unit=mm}
:::

::step[Try the place]{#trial}

Hold the bracket up to the panel.

::step[Drill the hole]{#drill-hole}

:::warning[Flying chips]
Steel chips can blind an eye. Wear :wear[eye-protection].
:::

:drill[bolt-hole]{with=${bit} trial=trial}.

::step[Close the hole]{#close}

${closing}`;
}
