import { describe, expect, it } from 'vitest';
import { told } from './told.ts';

interface Wanted {
  /** On the second template and in it. */
  readonly second?: string;
  readonly datum?: string;
  readonly hole?: string;
  readonly first?: string;
  readonly work?: string;
}

const cut = ':cut[window]{with=jigsaw trial=trial}.';
const drill = ':drill[bolt-hole]{with=bit trial=trial}.';

const guide = ({
  second = '',
  datum = 'Door edge',
  hole = 'centre="0,40" diameter="8 mm"',
  first = '',
  work = `${cut}\n${drill}\n:fit[bolt].`,
}: Wanted = {}) => `::wear[Eye protection]{#eye-protection}
::tool[Jigsaw]{#jigsaw}
::tool[8 mm bit]{#bit diameter="8 mm"}
::tool[200 mm hole saw]{#saw diameter="200 mm"}
::part[Side panel]{#panel}
::part[Inner panel]{#inner}
::kit[Bolt]{#bolt${second.includes('side=each') ? ' count=2' : ''}}

:::cut-template[Window]{#window panel=panel face=outside${first}}
::datum[Door edge]{axis=vertical at="0 mm"}
::datum[Sill edge]{axis=horizontal at="0 mm"}
::outline{points="-40,20 60,20 60,60 -40,60" unit=mm}
:::

:::cut-template[Bolt hole]{#holes ${second.includes('panel=') ? '' : 'panel=panel '}${second.includes('face=') ? '' : 'face=outside'}${second}}
::datum[${datum}]{axis=vertical at="0 mm"}
::datum[Sill edge]{axis=horizontal at="0 mm"}
::hole[Bolt hole]{#bolt-hole ${hole} unit=mm for=bolt}
:::

::step[Try the window]{#trial}

Hold the window up to the panel, with the :tool[saw] at hand.

::step[Cut and drill]{#cut-step}

:::warning[Flying chips]
Steel chips can blind an eye. Wear :wear[eye-protection].
:::

${work}
`;

const gone = async (wanted: Wanted) =>
  (await told(guide(wanted)))
    .filter((line) => line.startsWith('material-gone'))
    .map((line) => line.slice(15));

describe('what lies in a cut-out', () => {
  it('cannot be drilled after it, nor hold anything', async () => {
    expect(await gone({})).toEqual([':drill[bolt-hole]{with=bit trial=trial}', ':fit[bolt]']);
  });

  it('can be drilled before it, and then holds nothing', async () => {
    expect(await gone({ work: `${drill}\n${cut}\n:fit[bolt].` })).toEqual([':fit[bolt]']);
    expect(await gone({ work: `${drill}\n:fit[bolt]. :remove[bolt].\n${cut}` })).toEqual([]);
  });

  it.each<[string, Wanted, number]>([
    ['beside it', { hole: 'centre="80,40" diameter="8 mm"' }, 0],
    ['on another panel', { second: ' panel=inner' }, 0],
    ['from another datum, of which nobody knows the place', { datum: 'Hinge' }, 0],
    ['larger than it, which opens it up', { hole: 'centre="0,40" diameter="200 mm"' }, 0],
    [
      'from the inside, where x runs the other way',
      { second: ' face=inside', hole: 'centre="-55,40" diameter="8 mm"' },
      1,
    ],
    ['from the inside, and beside it', { second: ' face=inside', hole: 'centre="55,40" diameter="8 mm"' }, 0],
    ['on the other side', { first: ' side=left', second: ' side=right' }, 0],
    [
      'on each side, the mirrored one alone',
      { first: ' side=right', second: ' side=each', hole: 'centre="-55,40" diameter="8 mm"' },
      1,
    ],
  ])('%s', async (_, wanted, count) => {
    const work = `${cut}\n${wanted.hole?.includes('200') ? drill.replace('with=bit', 'with=saw') : drill}\n:fit[bolt].`;
    expect(await gone({ ...wanted, work })).toHaveLength(2 * count);
  });

  it('also of its own template: a start hole is drilled first', async () => {
    const start = '::hole[Start hole]{#start-hole centre="0,40" unit=mm diameter="8 mm"}';
    const one = (work: string) =>
      guide({ work, hole: 'centre="90,40" diameter="8 mm"' }).replace(
        '60,60 -40,60" unit=mm}',
        `60,60 -40,60" unit=mm}\n${start}`,
      );
    const drillStart = ':drill[start-hole]{with=bit trial=trial}.';
    const foundOf = async (work: string) =>
      (await told(one(work))).filter((line) => line.startsWith('material'));
    expect(await foundOf(`${drillStart}\n${cut}\n${drill}\n:fit[bolt].`)).toEqual([]);
    expect(await foundOf(`${cut}\n${drillStart}\n${drill}\n:fit[bolt].`)).toEqual([
      `material-gone: ${drillStart.slice(0, -1)}`,
    ]);
  });

  it('is judged where both are done on one build', async () => {
    const work = `:where[${cut.slice(0, -1)}.]{when=fog}\n:where[${drill.slice(0, -1)} and :fit[bolt].]{when="not fog"}`;
    expect(await gone({ work })).toEqual([]);
  });
});
