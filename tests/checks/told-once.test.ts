import { describe, expect, it } from 'vitest';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import { noStore } from '../../src/store/store.ts';
import { exampleWorkspace } from '../example-workspace.ts';
import { told } from './told.ts';

/** What a guide is told, with its notes: one text for each finding. */
async function said(body: string): Promise<readonly string[]> {
  const { findings } = await inspect(memoryFiles(exampleWorkspace(body)), noStore);
  return findings.map(({ message, notes }) => [message, ...notes.map((note) => note.message)].join('\n'));
}

const strip = (lines: { readonly plug?: string; readonly clip?: string; readonly fresh?: string }) =>
  `::part[Cover]{#cover}
::fastener[Screw]{#screw holds=cover}
::fastener[Clip]{#clip reuse=no holds=cover${lines.clip ?? ''}}
::kit[New clip]{#new-clip ${lines.fresh ?? 'replaces=clip'}}
::connector[Lamp plug]{#plug ${lines.plug ?? 'on=cover'}}

## Off {#off}

::step[Free the edge]{#edge}

:remove[screw], :remove[clip] and :disconnect[plug].

::step[Lift it]{#lift}

:remove[cover].

## On {#on}

::reverse{of=off}`;

describe('one fault gives one finding', () => {
  it.each([
    ['', {}, []],
    ['an unknown seat of a plug', { plug: 'on=covr' }, ['item-undeclared: covr']],
    ['a seat of the wrong kind', { plug: 'on=screw' }, ['relation-wrong-kind: screw']],
    ['an unknown replacement', { fresh: 'replaces=clips' }, ['item-undeclared: clips']],
    ['a replacement without an id', { fresh: 'replaces="Clip!"' }, ['attribute-value: Clip!']],
    ['a side that is none', { clip: ' side=both' }, ['attribute-value: both']],
    ['a torque that is none', { clip: ' torque=tight' }, ['attribute-value: tight']],
    ['a need that nothing declares', { plug: 'on=cover needs=key-out' }, ['item-undeclared: key-out']],
  ])('%s', async (_, lines, expected) => {
    expect(await told(strip(lines))).toEqual(expected);
  });

  it('a need is declared as a condition', async () => {
    expect(await said(strip({ plug: 'on=cover needs=key-out' }))).toEqual([
      'the declaration of "lamp plug" names "key-out", which this guide does not declare\ndeclare it, as in ::condition[Name]{#key-out}',
    ]);
  });

  it('a side of a step that nothing in it has', async () => {
    const sided = strip({}).replace('{#edge}', '{#edge side=each}');
    expect((await told(sided)).map((line) => line.split(':')[0])).toEqual(['side-disagrees']);
  });
});

const rows = (hole: string, bit: string, extra = '', drill = ':drill[h0]{with=bit}, :drill[h1]{with=bit}') =>
  `::tool[Drill bit]{#bit diameter="${bit}"}
::part[Bumper cover]{#cover}
::kit[Bezel screw]{#screw count=2 thread=M5x0.8}

:::cut-template[Bezel holes]{#holes panel=cover face=outside}
::datum[Centreline]{axis=vertical at="0 mm"}
::datum[Lower edge]{axis=horizontal at="0 mm"}
::hole[Left hole]{#h0 centre="0,30" for=screw ${hole}}
::hole[Right hole]{#h1 centre="30,30" for=screw ${hole}}
${extra}:::

::step[Drill and fit]{#drill}

${drill} and :fit[screw].`;
const round = (size: string) => `diameter="${size}" unit=mm`;

describe('one finding for all holes', () => {
  it.each([
    ['sound', rows(round('5.5 mm'), '5.5 mm'), []],
    ['no bit makes them', rows(round('5.5 mm'), '4 mm'), ['cut-hole-no-bit']],
    ['they are too small', rows(round('5 mm'), '5 mm'), ['clearance-hole-small']],
    ['they are too large', rows(round('9 mm'), '9 mm'), ['clearance-hole-large']],
    ['they lack their unit', rows('diameter="5.5 mm"', '5.5 mm'), ['coordinates-unitless']],
    [
      'a keep-out lies over them',
      rows(round('5.5 mm'), '5.5 mm', '::keep-out[Beam]{points="-40,20 200,20 200,40 -40,40" unit=mm}\n'),
      ['cut-keep-out-touched'],
    ],
    ['nobody drills them', rows(round('5.5 mm'), '5.5 mm', '', 'Take the :tool[bit]'), ['cut-never-made']],
  ])('%s', async (_, body, expected) => {
    expect((await told(body)).map((line) => line.split(':')[0])).toEqual(expected);
  });

  it('names the others as further places', async () => {
    expect(await said(rows(round('5.5 mm'), '4 mm'))).toEqual([
      'no declared bit makes a hole of 5.5 mm; declared: 4 mm\nthe same here',
    ]);
  });

  it('keeps holes apart that have faults of their own', async () => {
    const two = rows(round('5 mm'), '5 mm').replace(
      '#h1 centre="30,30" for=screw diameter="5 mm"',
      '#h1 centre="30,30" for=screw diameter="5.1 mm"',
    );
    const codes = (await told(two)).map((line) => line.split(':')[0]);
    expect(codes.filter((code) => code === 'clearance-hole-small')).toHaveLength(2);
  });
});

const gone = (noun: string) =>
  `the ${noun} is left over at the end: it was removed and never refitted, discarded or handed over`;

describe('a fault that a reversal causes is told at its line', () => {
  const key = `::part[Cover]{#cover needs=key-out}
::condition[Key out]{#key-out}

## Off {#off}

::step[Key]{#key}

:set[key-out].

::step[Lift it]{#lift}

:remove[cover].

## Between {#between}

::step[Key in]{#key-in}

:clear[key-out].

## On {#on}

`;

  it('where a derived step meets another state', async () => {
    expect(await told(`${key}::reverse{of=lift}`)).toEqual(['need-unmet: ::reverse{of=lift}']);
  });

  it('where it leaves a step out, once for all that this leaves off', async () => {
    const left = `::part[Cover]{#cover}
::fastener[Screw]{#screw holds=cover}
::fastener[Nut]{#nut holds=cover}

## Off {#off}

::step[Free the edge]{#edge}

:remove[screw] and :remove[nut].

::step[Lift it]{#lift}

:remove[cover].

## On {#on}

::reverse{of=off except=edge}`;
    expect(await told(left)).toEqual(['fastener-left-over: ::reverse{of=off except=edge}']);
    expect(await said(left)).toEqual([
      `${gone('screw')}\nit leaves out the step that does this\nthe screw is declared here\n${gone('nut')}`,
    ]);
  });

  it('where a shared file reverses, at its placement', async () => {
    const procedure = `---\ntitle: Cover off\n---\n\n::part[Cover]{#cover needs=key-out}\n::condition[Key out]{#key-out}\n\n::step[Lift it]{#lift}\n\n:set[key-out] and :remove[cover].\n\n::step[Turn the key]{#turn}\n\n:clear[key-out].\n\n::reverse{of=lift}\n`;
    const files = {
      'procedures/cover-off.md': procedure,
      'example/guide.md': '::procedure{of=cover-off}',
    };
    const lines = await told(files);
    expect(lines.map((line) => line.split(': ')[1])).toContain('::procedure{of=cover-off}');
  });
});

describe('where the remedy stands later, the finding says so', () => {
  const lines = (first: string, second: string) => `::part[Cover]{#cover needs=key-out}
::fastener[Clip]{#clip holds=cover}
::condition[Key out]{#key-out}
::connector[Plug]{#plug on=cover}

::step[First]{#first}

${first}.

::step[Second]{#second}

${second}.`;
  it.each([
    [
      'a state',
      ':disconnect[plug], :remove[clip] and :remove[cover]',
      ':set[key-out], :refit[cover], :refit[clip], :connect[plug] and :clear[key-out]',
      'need-unmet',
      '“key out” is set only here',
    ],
    [
      'a part that a clip holds',
      ':set[key-out], :disconnect[plug], :remove[clip], :remove[cover] and :refit[clip]',
      ':refit[cover], :connect[plug] and :clear[key-out]',
      'fastener-holds-nothing',
      'the cover is refitted only here',
    ],
    [
      'a clip that holds',
      ':set[key-out], :disconnect[plug] and :remove[cover]',
      ':remove[clip], :refit[cover], :refit[clip], :connect[plug] and :clear[key-out]',
      'part-still-fastened',
      'the clip is removed only here',
    ],
    [
      'a plug',
      ':set[key-out], :remove[clip] and :remove[cover]',
      ':disconnect[plug], :refit[cover], :refit[clip], :connect[plug] and :clear[key-out]',
      'part-still-connected',
      'the plug is disconnected only here',
    ],
    [
      'what was to be undone',
      ':set[key-out], :refit[clip]',
      ':disconnect[plug], :remove[clip], :remove[cover], :refit[cover], :refit[clip], :connect[plug] and :clear[key-out]',
      'undone-without-doing',
      'the clip is removed only here',
    ],
  ])('%s', async (_, first, second, code, note) => {
    const body = lines(first, second);
    expect((await told(body)).map((line) => line.split(':')[0])).toContain(code);
    expect((await said(body)).join('\n')).toContain(note);
  });
});

describe('words of a finding', () => {
  it.each([
    [
      '::part[Door]{#door}\n::fastener[Hinge screw]{#screw count=2 holds=door}\n\n::step[Turn]{#turn side=each}\n\n:loosen[screw] and :tighten[screw] beside the :part[door].',
      'the 2 hinge screws have no sides',
    ],
    [
      '::supply[Tape]{#tape temporary}\n\n::step[Peel]{#peel}\n\n:take-off[tape].',
      'the tape is taken off, but it is not on: no step before this puts it on',
    ],
    [
      '::part[Flap]{#flap count=2}\n\n::step[Shut]{#shut}\n\n:move-back[flap].',
      'the 2 flaps are moved back, but they are still in place: no step before this moves them aside',
    ],
    [
      '::condition[Key out]{#key}\n\n::step[Turn]{#turn}\n\n:clear[key].',
      '“key out” is cleared, and it does not hold: no step before this sets it',
    ],
  ])('%s', async (body, words) => {
    expect((await said(body)).join('\n')).toContain(words);
  });
});

describe('two cuts that one step handles', () => {
  const pattern = (label: string, id: string, y: number) =>
    `::pattern[${label}]{#${id} count=3 along="0,${y} 60,${y}" unit=mm diameter="5 mm"}`;
  const body = (one: string, other: string) =>
    `::part[Cover]{#cover}\n::tool[5 mm bit]{#bit diameter="5 mm"}\n\n:::cut-template[Rows]{#rows panel=cover face=outside}\n::datum[Centreline]{axis=vertical at="0 mm"}\n::datum[Lower edge]{axis=horizontal at="0 mm"}\n${pattern(one, 'a', 20)}\n${pattern(other, 'b', 50)}\n:::\n\n::step[Drill]{#drill}\n\n:drill[a]{with=bit} and :drill[b]{with=bit}.`;
  it('are printed with words that tell them apart', async () => {
    expect(await told(body('Upper row', 'Lower row'))).toEqual([]);
    expect(await told(body('Row of holes', 'Row of holes'))).toEqual([
      `label-repeated: ${pattern('Row of holes', 'b', 50)}`,
    ]);
  });
});
