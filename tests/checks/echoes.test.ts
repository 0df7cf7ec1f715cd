import { describe, expect, it } from 'vitest';
import { told } from './told.ts';

describe('a circle of relations', () => {
  const parts = (shutter: string) => `::part[Grille]{#grille covers=shutter}
::part[Shutter]{#shutter${shutter}}

::step[Take both off]{#off}

:remove[grille] and :remove[shutter].

::step[Put both on]{#on}

:refit[shutter] and :refit[grille].
`;
  const screws = (pin: string) => `::part[Cover]{#cover}
::fastener[Clip]{#clip holds=cover}
::fastener[Pin]{#pin holds=${pin}}

::step[Off]{#off}

:remove[pin], :remove[clip] and :remove[cover].

::step[On]{#on}

:refit[cover], :refit[clip] and :refit[pin].
`;

  it('is told once, and nothing that follows from it', async () => {
    expect(await told(parts(''))).toEqual([]);
    expect(await told(parts(' covers=grille'))).toEqual(['relation-cycle: shutter']);
  });

  it('counts before what its members cannot be related to', async () => {
    expect(await told(screws('cover'))).toEqual([]);
    expect(await told(screws('clip'))).toEqual(['relation-wrong-kind: clip']);
    expect(await told(screws('pin'))).toEqual(['relation-cycle: pin']);
  });
});

describe('a hole that could not be read', () => {
  const holes = (right: string) => `::tool[5.5 mm drill bit]{#bit diameter="5.5 mm"}
::part[Bumper cover]{#cover}
::kit[Bezel screw]{#screw count=2 thread=M5x0.8}

:::cut-template[Bezel holes]{#holes panel=cover face=outside}
::datum[Centreline]{axis=vertical at="0 mm"}
::datum[Lower edge]{axis=horizontal at="0 mm"}
::hole[Left bezel hole]{#left centre="-84,30" diameter="5.5 mm" for=screw unit=mm}
::hole[Right bezel hole]{#right centre="${right}}
:::

::step[Drill and fit]{#drill}

:drill[left]{with=bit} and :drill[right]{with=bit}. Then :fit[screw].
`;

  it('is not missed by the count of holes', async () => {
    expect(await told(holes('84,30" diameter="5.5 mm" for=screw unit=mm'))).toEqual([]);
    expect(await told(holes('84,30" diameter="5,5" for=screw unit=mm'))).toEqual(['attribute-value: 5,5']);
    expect(await told(holes('84;30" diameter="5.5 mm" for=screw unit=mm'))).toEqual([
      'attribute-value: 84;30',
    ]);
    expect(await told(holes('84,30" diameter="5.5 mm" for=scrw unit=mm'))).toEqual(['item-undeclared: scrw']);
  });

  it('is still counted where only its place is out of reach', async () => {
    expect(await told(holes('84,30000" diameter="5.5 mm" for=screw unit=mm'))).toEqual([
      'cut-number-unusable: ::hole[Right bezel hole]{#right centre="84,30000" diameter="5.5 mm" for=screw unit=mm}',
    ]);
  });
});

describe('an id that is spoilt', () => {
  const lever = (id: string) =>
    `::tool[Trim lever]${id}\n\n::step[Free the arch edge]{#arch}\n\nWork the :tool[trim-lever] behind the edge.\n`;

  it.each([
    ['{#trim-lever}', []],
    ['{#Trim_Lever}', ['attribute-value: Trim_Lever']],
    ['{#trim.lever}', ['attribute-class: #trim.lever']],
    ['{#trim lever}', ['attribute-unknown: trim lever']],
    ['{#front lever}', ['attribute-unknown: front lever']],
    ['{#__trim_lever_2}', ['attribute-value: __trim_lever_2']],
    ['{#ключ}', ['attribute-value: ключ']],
    ['{#_}', ['attribute-value: _']],
    ['', ['attribute-missing: tool']],
  ])('is told once: %s', async (id, expected) => {
    expect(await told(lever(id))).toEqual(expected);
  });

  it.each([
    ['{#arch}', []],
    ['{#Arch}', ['attribute-value: Arch']],
    ['{#_}', ['attribute-value: _']],
    ['', ['attribute-missing: step']],
  ])('of a step is told once: %s', async (id, expected) => {
    const body = `::part[Cover]{#cover}\n\n::step[Free the edge]${id}\n\n:remove[cover].\n\n::step[Look]{#look}\n\nAs in :step[arch], or [there](#arch). :refit[cover].\n`;
    expect(await told(body)).toEqual(expected);
  });
});

describe('a datum out of reach', () => {
  const template = (at: string) => `::tool[Jigsaw]{#jigsaw}
::part[Bumper cover]{#cover}

:::cut-template[Opening]{#opening panel=cover face=outside}
::datum[Vehicle centreline]{axis=vertical at="${at}"}
::datum[Lower edge of the cover]{axis=horizontal at="0 mm"}
::outline{points="-40,20 40,20 40,60 -40,60" unit=mm}
:::

::step[Cut the opening]{#cut-opening}

Lay the :cut-template[opening] template on the :part[cover], then :cut[opening]{with=jigsaw}.
`;

  it('is not told of as missing', async () => {
    expect(await told(template('0 mm'))).toEqual([]);
    expect(await told(template('9 m'))).toEqual([
      'cut-number-unusable: ::datum[Vehicle centreline]{axis=vertical at="9 m"}',
    ]);
    expect(await told(template('9'))).toEqual(['attribute-value: 9']);
  });
});

describe('the packing list', () => {
  const guide = (contents: string) => `---
title: Example
platform: example-van
contents:
  ${contents}
---

## What you need {#need}

::none{of=wear}
::none{of=tools}
::none{of=supplies}
::none{of=conditions}
::kit[Flange nut]{#nut count=4}

## Fit {#fit}

::step[Turn the nuts on]{#turn}

:fit[nut].
`;
  const on = (contents: string) => told({ 'example/guide.md': guide(contents) });

  it('is pointed at where the author mends it', async () => {
    expect(await on('nut: 4')).toEqual([]);
    expect(await on('nut: 6')).toEqual(['contents-disagree: 6']);
    expect(await on('nuts: 4')).toEqual(['contents-disagree: nuts']);
    expect(await on('bracket: 1')).toEqual(['contents-disagree: bracket', 'contents-disagree: nut']);
  });
});

it.each([
  ['0 min', ['attribute-value: 0 min']],
  ['0..0 s', ['attribute-value: 0..0 s']],
  ['0..2 min', []],
])('refuses a step that takes no time: %s', async (time, expected) => {
  expect(await told(`::step[Look]{#look time="${time}"}\n\nLook behind the edge.\n`)).toEqual(expected);
});

it('reads a workspace whose lines end as they did on old machines', async () => {
  const guide =
    '---\ntitle: Example\nplatform: example-van\nrevision: 2\n---\n\n## Need {#need}\n\n::none{of=wear}\n::tool{#lever}\n::none{of=supplies}\n::none{of=kit}\n::none{of=conditions}\n\n::step[Look]{#look}\n\nLook with the :tool[lever].\n';
  const old = (text: string) => text.replaceAll('\n', '\r');
  const files = (text: string, tools: string) => ({ 'example/guide.md': text, 'tools.yaml': tools });
  const tools = 'lever:\n  name: Lever\nhook:\n  name: Hook\n';
  expect(await told(files(old(guide), old(tools)))).toEqual([]);
  expect(await told(files(old(guide.replace('title', 'titel')), old(tools)))).toEqual([
    'yaml-unknown-key: titel',
  ]);
  expect(await told(files(old(guide), old(tools.replace('hook:\n  name', 'hook:\n  nme'))))).toEqual([
    'yaml-missing-key: hook',
  ]);
});
