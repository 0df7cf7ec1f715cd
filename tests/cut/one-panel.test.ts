import { describe, expect, it } from 'vitest';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import { exampleWorkspace } from '../example-workspace.ts';

const datums = `::datum[Door edge]{axis=vertical at="0 mm"}
::datum[Sill edge]{axis=horizontal at="0 mm"}`;
const window = '::outline{points="-40,20 60,20 60,60 -40,60" unit=mm}';

interface Panel {
  /** On the first template, and in it. */
  readonly first?: string;
  readonly window?: string;
  /** On the second template, and in it. */
  readonly second?: string;
  readonly holes?: string;
}

/** Two templates of one panel, and what their guide is told about how they lie together. */
async function told(one: Panel): Promise<readonly string[]> {
  const guide = `::wear[Eye protection]{#eye-protection}
::tool[Jigsaw]{#jigsaw}
::part[Side panel]{#panel}

:::cut-template[Window]{#window panel=panel face=outside${one.first ?? ''}}
${datums}
${one.window ?? window}
:::

:::cut-template[Handle]{#handle panel=panel${one.second?.includes('face=') ? '' : ' face=outside'}${one.second ?? ''}}
${datums}
${one.holes}
:::

::step[Try the window]{#trial}

Hold the window up to the panel.

::step[Drill and cut]{#do}

:::warning[Flying chips]
Steel chips can blind an eye. Wear :wear[eye-protection].
:::

:cut[handle]{with=jigsaw trial=trial}.
:cut[window]{with=jigsaw trial=trial}.
`;
  const { findings } = await inspect(memoryFiles(exampleWorkspace(guide)));
  return findings.map(({ code, message, notes }) =>
    [`${code}: ${message}`, ...notes.filter(({ at }) => !at).map((note) => note.message)].join(' | '),
  );
}

const hole = (centre: string, rest = '', diameter = '8 mm') =>
  `::hole[Bolt]{#bolt centre="${centre}" unit=mm diameter="${diameter}"${rest}}`;

describe('templates of one panel are judged together', () => {
  it.each<[string, Panel, readonly string[]]>([
    ['beside each other', { holes: hole('80,40') }, []],
    [
      'a hole half in an opening',
      { holes: hole('61,40') },
      [
        'cut-features-coincide: “Window” (A) and “Bolt” (A of “Handle”) overlap on the panel that both templates cut',
      ],
    ],
    ['a start hole in the waste', { holes: hole('0,40') }, []],
    ['a start hole that touches the line', { holes: hole('56,40') }, []],
    [
      'the same hole again, on a sheet for the other face',
      { window: hole('80,40').replace('#bolt', '#same'), holes: hole('-80,40'), second: ' face=inside' },
      ['material-gone: the bolt is made where “Handle” has been cut away by then'],
    ],
    [
      'a web that the other one asks for',
      { first: ' web="15 mm"', holes: hole('72,40') },
      [
        'cut-web-narrow: only 8 mm of panel stays between “Window” (A) and “Bolt” (A of “Handle”); the templates of this panel ask for 15 mm',
      ],
    ],
    [
      'a keep-out that only the other draws',
      {
        window: `${window}\n::keep-out[Window motor]{points="70,20 100,20 100,60 70,60" unit=mm}`,
        holes: hole('80,40'),
      },
      [
        'cut-keep-out-touched: “Bolt” (A) reaches the keep-out “Window motor” of “Window”, a template of the same panel',
      ],
    ],
    [
      'a panel that only the other draws',
      {
        window: `${window}\n::outline{of=panel points="-200,0 90,0 90,200 -200,200" unit=mm}`,
        holes: hole('88,40'),
      },
      ['cut-outside-panel: “Bolt” (A) does not lie within the panel’s outline that “Window” draws'],
    ],
    [
      'mirrored for the inside face',
      { second: ' face=inside', holes: hole('-61,40') },
      [
        'cut-features-coincide: “Window” (A) and “Bolt” (A of “Handle”) overlap on the panel that both templates cut',
      ],
    ],
    ['on the other side', { first: ' side=left', second: ' side=right', holes: hole('61,40') }, []],
    [
      'on a right side that is the left one mirrored',
      { first: ' side=right', second: ' side=each', holes: hole('-61,40') },
      [
        'cut-features-coincide: “Window” (A) and “Bolt” (A of “Handle”) overlap on the panel that both templates cut',
      ],
    ],
    [
      'curved about another axis',
      {
        first: ' curve-radius="900 mm"',
        second: ' curve-radius="900 mm" curve-axis=horizontal',
        holes: hole('61,40'),
      },
      [],
    ],
  ])('%s', async (_, panel, expected) => {
    expect(await told(panel)).toEqual(expected);
  });

  it('only where a build has both', async () => {
    const split = {
      window: `${window.replace('unit=mm', 'unit=mm when=fog')}\n${hole('0,100').replace('#bolt', '#drain')}`,
    };
    expect(
      await told({
        ...split,
        holes: `${hole('61,40', ' when="not fog"')}\n${hole('80,100').replace('#bolt', '#other')}`,
      }),
    ).toEqual([]);
    expect(
      await told({
        ...split,
        holes: hole('61,40'),
      }),
    ).toEqual([
      'cut-features-coincide: “Window” (A) and “Bolt” (A of “Handle”) overlap on the panel that both templates cut | This happens when *fog* is fitted.',
    ]);
  });
});

describe('figures in the wrong unit are asked about', () => {
  const asks = async (panel: Panel) =>
    (await told(panel)).filter((line) => line.startsWith('cut-unit')).map((line) => line.slice(19));

  it.each<[string, Panel, readonly string[]]>([
    [
      'inches for millimetres, beside another template',
      { holes: hole('80,40').replace('unit=mm', 'unit=in') },
      [
        '“Bolt” (A) lies at 2032, 1016, and all else on this panel within 60 mm of the zero point; divided by 25.4 it would lie at 80, 40; are its figures in the unit that it states?',
      ],
    ],
    [
      'millimetres for inches',
      {
        window: '::outline{points="8,4 12,4 12,8 8,8" unit=in}',
        holes: hole('13,5'),
      },
      [
        '“Bolt” (A) lies at 13, 5, and all else on this panel at least 203.2 mm from the zero point; times 25.4 it would lie at 330.2, 127; are its figures in the unit that it states?',
      ],
    ],
    [
      'a diameter',
      { holes: `${hole('80,40')}\n${hole('80,300', '', '8 in').replace('#bolt', '#large')}` },
      [
        '“Bolt” (B) is 203.2 mm wide, 25.4 times the 8 mm of “Bolt” (A); are its figures in the unit that it states?',
      ],
    ],
    ['a hole near the zero point, as the datum hole of many panels', { holes: hole('2,3') }, []],
    ['a hole far from the others', { holes: hole('260,120') }, []],
    [
      'a cable hole of an inch among bolt holes of a millimetre more than one',
      { holes: `${hole('80,40', '', '5 mm')}\n${hole('80,100', '', '25.4 mm').replace('#bolt', '#large')}` },
      [],
    ],
  ])('%s', async (_, panel, expected) => {
    expect(await asks(panel)).toEqual(expected);
  });
});

describe('a cut beyond the reach of a rule asks for a nearer datum', () => {
  const panel = '::outline{of=panel points="-200,0 2600,0 2600,400 -200,400" unit=mm}';
  const far = (offer: string): string =>
    `cut-datum-far: “Bolt” (A) lies 2450 mm from the nearest vertical datum, “Door edge”; a rule of 2000 mm does not reach it, so ${offer}`;

  it.each<[string, Panel, readonly string[]]>([
    ['within reach', { window: window.replaceAll('60,', '20,'), holes: hole('1990,40') }, []],
    [
      'anywhere',
      { holes: hole('2450,40') },
      [far('give it a datum near x = 2450, such as a seam or an edge')],
    ],
    [
      'an edge of the panel itself',
      { holes: `${hole('2450,40')}\n${panel}` },
      [far('the panel’s own edge at x = 2600 lies 150 mm from it and can be its datum')],
    ],
    ['one that is there', { holes: `${hole('2450,40')}\n::datum[Rear gap]{axis=vertical at="2300 mm"}` }, []],
    // 80 × 25.4 = 2032: what is wrong is the unit, and that is told.
    ['a slip of the unit', { holes: hole('80,40').replace('unit=mm', 'unit=in') }, ['cut-unit-doubtful']],
  ])('%s', async (_, one, expected) => {
    const all = await told(one);
    const found = all.map((line) => (line.startsWith('cut-unit') ? 'cut-unit-doubtful' : line));
    expect(found).toEqual(expected);
  });
});
