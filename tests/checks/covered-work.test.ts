import { describe, expect, it } from 'vitest';
import { told } from './told.ts';

const liner = `::part[Arch liner]{#liner covers="sensor hose"}
::part[Level sensor]{#sensor}
::part[Washer hose]{#hose}

`;

describe('work behind a cover that is in place', () => {
  it.each(['clean', 'route'])('is told: :%s', async (verb) => {
    const behind = `::step[Work]{#job}\n\n:${verb}[sensor]. Leave the :part[liner] and the :part[hose] alone.`;
    expect(await told(`${liner}${behind}`)).toEqual([`part-still-covered: :${verb}[sensor]`]);
    const open = `::step[Work]{#job}\n\n:move-aside[liner], :${verb}[sensor] and :move-back[liner]. Leave the :part[hose] alone.`;
    expect(await told(`${liner}${open}`)).toEqual([]);
  });

  it('is none on the bench, where nothing lies over it', async () => {
    const bench = `::step[Work]{#job}\n\n:move-aside[liner] and :remove[sensor]. :move-back[liner] for now, and :clean[sensor]. :move-aside[liner] again, :refit[sensor] and :move-back[liner]. Leave the :part[hose] alone.`;
    expect(await told(`${liner}${bench}`)).toEqual([]);
  });
});

it('a bead of sealant in the place of an old seal wants its cover off', async () => {
  const body = (order: string) =>
    `::part[Cover]{#cover covers=seal}\n::part[Seal]{#seal}\n::supply[Sealant]{#bead quantity="1 m" replaces=seal}\n\n::step[Change the seal]{#change}\n\n:remove[cover], :remove[seal] and :discard[seal]. ${order}.`;
  const bead = ':apply[bead]{amount="1 m"}';
  expect(await told(body(`${bead}, and :refit[cover]`))).toEqual([]);
  expect(await told(body(`:refit[cover], and ${bead}`))).toEqual([`part-still-covered: ${bead}`]);
});

describe('what an action works on besides what it names', () => {
  const flange = (supply: string) =>
    `::part[Lid]{#lid covers=flange}\n::part[Flange]{#flange}\n${supply}\n\n::step[Work]{#job}\n\n`;
  const sealed = flange('::supply[Sealant]{#bead quantity="1 m"}');
  const masked = flange('::supply[Masking tape]{#tape quantity="1 m" temporary}');
  const bead = ':apply[bead]{amount="1 m" on=flange}';
  const tape = ':apply[tape]{amount="1 m" on=flange}';

  it('lies open when something is put on it', async () => {
    const aside = (then: string) => `${sealed}:move-aside[lid]. ${then}`;
    expect(await told(aside(`${bead} and :move-back[lid].`))).toEqual([]);
    expect(await told(aside(`:move-back[lid] and ${bead}.`))).toEqual([`part-still-covered: ${bead}`]);
  });

  it('lies open when what was put on it comes off', async () => {
    const taped = (then: string) => `${masked}:move-aside[lid] and ${tape}. ${then}`;
    expect(await told(taped(':take-off[tape] and :move-back[lid].'))).toEqual([]);
    expect(await told(taped(':move-back[lid] and :take-off[tape].'))).toEqual([
      'part-still-covered: :take-off[tape]',
    ]);
  });

  it('may lie on the bench, or be what covers', async () => {
    const bench = `:move-aside[lid], :remove[flange] and :move-back[lid]. ${bead}. :move-aside[lid], :refit[flange] and :move-back[lid].`;
    expect(await told(`${sealed}${bench}`)).toEqual([]);
    expect(await told(`${sealed}:apply[bead]{amount="1 m" on=lid}.`)).toEqual([]);
  });

  it('is the panel that is cut', async () => {
    const sill = (order: string, side = '', there = side) => `::tool[Jigsaw]{#saw}
::part[Sill trim]{#trim covers=sill${side}}
::part[Sill]{#sill${there}}

:::cut-template[Notch]{#notch panel=sill face=outside${there}}
::datum[Door edge]{axis=vertical at="0 mm"}
::datum[Lower edge]{axis=horizontal at="0 mm"}
::outline{points="0,0 50,0 50,40 0,40" unit=mm}
:::

::step[Try the step plate]{#trial${there}}

Hold the step plate up to the sill.

::step[Cut the notch]{#cut${there}}

:::warning[Flying chips]
Chips can blind an eye. Wear :wear[eye-protection].
:::

${order}`;
    const cut = ':cut[notch]{with=saw trial=trial}';
    expect(await told(sill(`:remove[trim], ${cut} and :refit[trim].`))).toEqual([]);
    expect(await told(sill(`${cut}. Leave the :part[trim].`))).toEqual([`part-still-covered: ${cut}`]);
    const each = sill(`:remove[trim], ${cut} and :refit[trim].`, ' side=each');
    expect(await told(each)).toEqual([]);
    expect(await told(sill(`${cut}. Leave the :part[trim].`, ' side=left', ' side=right'))).toEqual([
      'relation-side-missing: sill',
    ]);
  });
});

describe('a one-time fastener that is only turned loose', () => {
  const head = `::tool[13 mm socket]{#socket drive="hex 13"}
::part[Bracket]{#bracket}
::fastener[Stretch bolt]{#bolt reuse=no drive="hex 13" holds=bracket with=socket}
`;
  const fresh = (torque: string) =>
    `::tool[Torque wrench]{#wrench range="5..60 N·m"}\n::kit[New bolt]{#new-bolt drive="hex 13" thread=M8x1.25 grade=8.8${torque} replaces=bolt with="socket wrench"}\n`;

  it('is used up', async () => {
    const again = `${head}\n::step[Shift it]{#shift}\n\n:loosen[bolt], shift the :part[bracket] and :tighten[bolt].`;
    expect(await told(again)).toEqual(['one-time-refitted: :tighten[bolt]']);
    expect(await told(again.replace(' reuse=no', ''))).toEqual([]);
  });

  it('is not tightened by a reversal, in its hole or out of it', async () => {
    const loose = (more: string, items = '') =>
      `${head}${items}\n## Off {#off}\n\n::step[Turn it loose]{#loose}\n\n:loosen[bolt] beside the :part[bracket].\n${more}\n## On {#on}\n\n::reverse{of=off}\n`;
    const out = '\n::step[Take it out]{#out}\n\n:remove[bolt] and :discard[bolt].\n';
    expect(await told(loose(''))).toEqual(['reverse-unsound: ::reverse{of=off}']);
    expect(await told(loose(out, fresh(' torque="22 N·m"')))).toEqual([]);
    const untorqued = loose(out, fresh('').replace(/^.*\n/, '').replace(' wrench', ''));
    expect(await told(untorqued)).toEqual([]);
  });
});

it('a one-time fastener from the box is driven once', async () => {
  const body = (words: string) =>
    `::tool[T20 bit]{#bit drive=T20}\n::kit[Rail]{#rail}\n::kit[Coated screw]{#screw drive=T20 reuse=no holds=rail}\n\n::step[Fit the rail]{#job}\n\n:fit[rail] and :fit[screw]{with=bit}. ${words}`;
  expect(await told(body(''))).toEqual([]);
  expect(await told(body(':remove[screw]{with=bit}, and :fit[screw]{with=bit} again.'))).toEqual([
    'one-time-refitted: :fit[screw]{with=bit}',
  ]);
});

describe('a warning after what it guards', () => {
  const step = (
    after: string,
    message = ':::caution[Grit]\nDirt falls out of the tray and can hurt an eye. Look away.\n:::',
  ) =>
    `::part[Undertray]{#undertray}\n::part[Heat shield]{#shield}\n\n::step[Take down the tray]{#tray}\n\n:remove[undertray]{as=tray}, and :refit[undertray]{as=tray}.\n\n${message}\n\n${after}`;

  it.each([
    ['nothing is said but what stays', 'The :part[shield] stays in.'],
    ['a sentence that does nothing follows', 'The tray is heavy. The :part[shield] stays in.'],
  ])('is told where %s', async (_, after) => {
    const [first] = await told(step(after));
    expect(first?.slice(0, 13)).toBe('message-late:');
  });

  it('is none before further work', async () => {
    expect(await told(step(':remove[shield]. Then :refit[shield].'))).toEqual([]);
  });

  it('is told where it speaks of work that is not done again', async () => {
    const late = ':::caution[Sharp clips]\nA clip can hurt a finger when you are prying. Wear gloves.\n:::';
    const found = await told(step(':move-aside[shield]. Then :move-back[shield].', late));
    expect(found.map((line) => line.slice(0, 12))).toEqual(['message-late']);
  });
});

it('the refit of a step repeats what guards its section, and other airbag work is warned of too', async () => {
  const message =
    ':::warning[Airbag charge]\nA charged module can fire and injure you. Wait for its time.\n:::';
  const guide = (guarded: string) => `## Need {#need}

::condition[Battery isolated]{#battery-off}
::connector[Airbag plug]{#airbag-plug work=airbag needs=battery-off}

## Off {#off}

${guarded}

::step[Isolate the battery]{#isolate}

:set[battery-off]{say="make sure of"}.

::step[Free the plug]{#free sign-off=second}

:disconnect[airbag-plug].

## On {#on}

::reverse{of=free}

::reverse{of=isolate}`;
  expect(await told(guide(message))).toEqual([]);
  expect(await told(guide(''))).toEqual([]);
});
