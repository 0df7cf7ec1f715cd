import { describe, expect, it } from 'vitest';
import { told } from './told.ts';

const holes = (trialSide: string) => `::part[Cover]{#cover}
::tool[8 mm drill bit]{#bit diameter="8 mm"}

:::cut-template[Holes]{#holes panel=cover face=outside side=each}
::datum[Centreline]{axis=vertical at="0 mm"}
::datum[Lower edge]{axis=horizontal at="0 mm"}
::hole[Hole]{#hole centre="100,40" diameter="8 mm" unit=mm}
:::

::step[Try the place]{#trial${trialSide}}

Hold the bracket up and see that it lies flat.

::step[Drill]{#drill side=each}

:::warning[Flying chips]
Chips can injure an eye. Wear :wear[eye-protection].
:::

:drill[hole]{with=bit trial=trial}.`;

describe('a trial fit', () => {
  it.each([
    ['on each side', ' side=each', []],
    ['for both sides at once', '', []],
    ['on the left', ' side=left', ['cut-before-trial: :drill[hole]{with=bit trial=trial}']],
  ])('%s', async (_, side, expected) => {
    expect(await told(holes(side))).toEqual(expected);
  });
});

const stacked = (lug: string) => `::part[Lug]{#lug length="10 mm"${lug}}
::part[Plate]{#plate length="5 mm"}
::kit[Bar]{#bar side=each length="6 mm"}
::kit[Bolt]{#bolt side=each length="40 mm" thread=M8x1.25 holds=bar stack="bar plate lug nut"}
::kit[Nut]{#nut side=each thread=M8x1.25 length="6 mm" holds=bar}

::step[Hang the bar]{#hang}

:fit[bar] on the :part[lug] and the :part[plate], :fit[bolt], :fit[nut].`;

describe('a bolt on each side', () => {
  it.each([
    ['goes through a lug on each', ' side=each', []],
    ['goes through what is there once, from side to side', '', []],
    ['cannot go through a lug on the left alone', ' side=left', ['relation-side-missing: lug']],
  ])('%s', async (_, lug, expected) => {
    expect(await told(stacked(lug))).toEqual(expected);
  });
});

const teed = (words: string, side = 'left') => `::connector[Lamp tee]{#tee side=${side}}

::step[Undo the tee]{#off}

:disconnect[tee] ${words}.

::step[Plug the tee in]{#on}

:connect[tee].`;

describe('a sentence about what is on the left', () => {
  it.each([
    ['behind the left tail lamp', []],
    ['behind the right tail lamp', ['side-contradicted: :disconnect[tee]']],
    ['between the lamp and the inner right panel', ['side-contradicted: :disconnect[tee]']],
    ['between the left lamp and the right lamp', []],
    ['in the right order', []],
    ['at the right angles', []],
    ['to the right of the bracket', []],
  ])('%s', async (words, expected) => {
    expect(await told(teed(words))).toEqual(expected);
  });
});

describe('a hole on each side', () => {
  const plugged = (steps: string) =>
    `${holes('').split('::step[Drill]')[0]?.replace('unit=mm}', 'for=plug unit=mm}')}
${steps}`.replace('::part[Cover]{#cover}', '::part[Cover]{#cover}\n::kit[Hole plug]{#plug side=each}');
  const drill = (side: string) =>
    `::step[Drill on the ${side}]{#drill-${side} side=${side}}\n\n:drill[hole]{with=bit trial=trial}.\n\n`;
  const fits = (side: string) => `::step[Plug on the ${side}]{#fit-${side} side=${side}}\n\n:fit[plug].\n\n`;

  it('takes its plug once it is made, one side after the other', async () => {
    const turns = `${drill('left')}${fits('left')}${drill('right')}${fits('right')}`;
    expect(await told(plugged(turns))).toEqual([]);
    const late = `${drill('left')}${fits('left')}${fits('right')}${drill('right')}`;
    expect(await told(plugged(late))).toEqual(['hole-late: :fit[plug]']);
  });
});

it('what is on each side is handled on each, or on neither', async () => {
  const clip = (steps: string) => `::part[Trim]{#trim side=each}\n\n${steps}`;
  const left = '::step[Left]{#left side=left}\n\n:remove[trim] and :refit[trim].\n\n';
  expect(await told(clip(left))).toEqual(['side-forgotten: each']);
  expect(await told(clip(`${left}${left.replace('Left', 'Right').replaceAll('left', 'right')}`))).toEqual([]);
});
