/** The declarations of a small bar that two bolts clamp to a frame through spacers. */
export function clampedBar(bolt: string, more = ''): string {
  return `::part[Frame]{#frame}
::tool[13 mm socket]{#socket-13 drive="hex 13"}
::tool[Torque wrench, 10–60 N·m]{#torque-60 range="10..60 N·m"}
::kit[Bar]{#bar}
::kit[Spacer]{#spacer count=2 length="12 mm"}
::kit[Bar bolt]{#bolt count=2 thread=M8x1.25 grade=8.8 drive="hex 13" torque="20 N·m" holds=bar stack="bar spacer frame" with="torque-60 socket-13" ${bolt}}
${more}`;
}

/** A step of that job: a sentence for each thing that is done. */
export function barStep(...done: readonly string[]): string {
  return `\n::step[Hang the bar]{#hang}\n\n${done.map((one) => `:${one}.`).join('\n')}\n`;
}
