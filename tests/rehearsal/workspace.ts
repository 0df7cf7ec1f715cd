import { memoryFiles } from '../../src/shop/index.ts';

/** A job with one of each thing that can be done at the wrong time. */
const guideText = `---
title: Front light bar
platform: test-van
part-number: T-1
revision: 1
updated: 2026-10-02
---

## Need {#need}

::wear[Eye protection]{#glasses}
::tool[T25 bit]{#bit drive=T25}
::tool[10 mm socket]{#socket drive="hex 10"}
::tool[Torque wrench, 10 to 60 N·m]{#wrench range="10..60 N·m"}
::tool[Cutter]{#cutter cutter-radius="3 mm" diameter="6 mm"}
::supply[Thread-lock]{#lock quantity="5 ml"}
::kit[Light bar]{#light-bar}
::kit[Bar bolt]{#bar-bolt count=4 thread=M8x1.25 grade=8.8 drive="hex 10" torque="20 N·m" pattern=cross holds=light-bar coat=lock}
::kit[New clip]{#new-clip replaces=old-clip holds=cover}
::condition[Battery isolated]{#battery-off}

## Off {#off}

::part[Cover]{#cover covers=beam}
::part[Beam]{#beam}
::fastener[Side screw]{#side-screw drive=T25 count=3 side=each holds=cover}
::fastener[Old clip]{#old-clip holds=cover reuse=no}
::connector[Lamp plug]{#lamp-plug side=each on=cover needs=battery-off}

:::cut-template[Notch]{#notch panel=cover face=outside}
::datum[Centreline]{axis=vertical at="0 mm"}
::datum[Lower edge]{axis=horizontal at="0 mm"}
::outline{points="-62,10 r4 62,10 r4 62,38 r4 -62,38 r4" unit=mm}
:::

::step[Isolate the battery]{#isolate time="2 min"}

:::danger[Live wires]
A live wire burns skin. Keep your hands clear of it.
:::

:set[battery-off].

::step[Free the cover]{#free time="5 min"}

:remove[side-screw]{with=bit}. :remove[old-clip]. :disconnect[lamp-plug]. :remove[cover]. :discard[old-clip].

## Fit {#fit}

::step[Wipe the beam]{#wipe time="2 min"}

:clean[beam].

::step[Try the bar]{#trial time="2 min"}

Hold it up.

::step[Cut the notch]{#cut time="5 min"}

Wear :wear[glasses]. :cut[notch]{with=cutter trial=trial}.

::step[Fit the bar]{#bar time="5 min" after=cut}

:fit[light-bar]. :apply[lock]{amount="1 ml"} and :start[bar-bolt]. :tighten[bar-bolt]{with="wrench socket"}.

## Refit {#refit}

::step[Refit the cover]{#on time="5 min"}

:refit[cover], :connect[lamp-plug], :refit[side-screw]{with=bit} and :fit[new-clip]. :clear[battery-off].
`;

/** A workspace of that one guide. */
export const files = memoryFiles({
  'shop.yaml': 'name: Test\nunits: metric\npapers: [A4]\ncrew: 1\n',
  'tools.yaml': '{}\n',
  'fasteners.yaml': '{}\n',
  'platforms/test-van.md': '---\ntitle: Test van\n---\n\nA van.\n',
  'light-bar/guide.md': guideText,
});
