/** A guide that tightens one bolt with a crowfoot; `attributes` go on the torque wrench. */
export function crowfootExample(torque: string, attributes = ''): string {
  return `::tool[Torque wrench, 10–60 N·m]{#torque-60 range="10..60 N·m"${attributes}}
::tool[13 mm crowfoot]{#crowfoot-13 drive="hex 13" offset="40 mm"}
::fastener[Bracket bolt]{#bolt drive="hex 13" torque="${torque}"}

::step[Loosen the bolt]{#loosen}

:loosen[bolt]{with=crowfoot-13}.

::step[Tighten the bolt]{#tighten}

:tighten[bolt]{with="torque-60 crowfoot-13"}.`;
}
