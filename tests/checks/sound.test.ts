import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { diskFiles } from '../../src/shop/files/disk-files.ts';
import { told } from './told.ts';

/*
 * Sound and unusual: what a fitter meets and a checker may not refuse. Widths, threads and wires that are not in a
 * standard's first table are common practice (no source).
 */

const look = '\n\n::step[Look around]{#look}\n\nLook for dents.';
const bolt = (attributes: string) =>
  `::fastener[Bolt]{#bolt ${attributes}}\n\n::step[Feel the bolt]{#feel}\n\nSee that the :fastener[bolt] sits flat.`;
const feed = (wire: string, fuse = '3 A', load = '2 A', length = '1 m') =>
  `::circuit[Feed]{#feed load="${load}" length="${length}" wire="${wire}" fuse="${fuse}" voltage="12 V"}${look}`;
const turned = (attributes: string, tool: string) =>
  `::tool[Socket]{#socket drive="${tool}"}\n::fastener[Bolt]{#bolt ${attributes}}\n\n::step[Turn it]{#turn}\n\n:loosen[bolt]{with=socket} and :tighten[bolt]{with=socket}.`;
const tightened = (attributes: string) =>
  `::tool[Socket]{#socket drive="hex 13"}\n::tool[Torque wrench, 5–400 N·m]{#wrench range="5..400 N·m"}\n::fastener[Bolt]{#bolt drive="hex 13" ${attributes}}\n\n::step[Turn it]{#turn}\n\n:loosen[bolt]{with=socket} and :tighten[bolt]{with="wrench socket"}.`;
const clips = (old: string, fresh: string) =>
  `::part[Lining]{#lining}\n::fastener[Push clip]{#clip count=4 reuse=no holds=lining ${old}}\n::kit[New clip]{#new-clip count=4 replaces=clip ${fresh}}\n\n::step[Change the clips]{#change}\n\n:remove[clip], :discard[clip] and :remove[lining]. Then :refit[lining] and :fit[new-clip].`;
const taped = (declared: string, used: string) =>
  `::supply[Foam tape]{#tape quantity="${declared}"}\n\n::step[Tape the end]{#end}\n\n:apply[tape]{amount="${used}"}.`;
const rated = (limit: string, claim: string) =>
  `::rating[Rail]{#rail limit="${limit}"}\n::rating[Awning]{#awning claim="${claim}"}${look}`;

const sound: readonly (readonly [string, string])[] = [
  ['a wheel nut M12x1.5 of 21 mm', bolt('thread=M12x1.5 drive="hex 21"')],
  ['a wheel nut M12x1.5 of 19 mm', bolt('thread=M12x1.5 drive="hex 19"')],
  ['a wheel bolt M14x1.5 of 17 mm', bolt('thread=M14x1.5 drive="hex 17"')],
  ['a wheel bolt M14x1.5 of 19 mm', bolt('thread=M14x1.5 drive="hex 19"')],
  ['a belt anchor 7/16-20 of 17 mm', bolt('thread=7/16-20 drive="hex 17"')],
  ['a belt anchor 7/16-20 with a T50', bolt('thread=7/16-20 drive=T50')],
  ['a hub thread M33', bolt('thread=M33')],
  ['a hub thread M36x1.5', bolt('thread=M36x1.5')],
  ['a ball shank 1-14', bolt('thread=1-14')],
  ['a ball shank 1-1/4-12', bolt('thread=1-1/4-12')],
  ['a Japanese flange bolt M8 of 12 mm', bolt('thread=M8x1.25 drive="hex 12"')],
  ['a thread M10x1.25 of 14 mm', bolt('thread=M10x1.25 drive="hex 14"')],
  ['sensor wire of 0.22 mm²', feed('0.22 mm²', '2 A', '0.3 A')],
  ['lamp wire of 0.35 mm²', feed('0.35 mm²', '3 A', '1 A')],
  ['Japanese wire of 0.85 mm²', feed('0.85 mm²', '10 A')],
  ['Japanese wire of 1.25 mm²', feed('1.25 mm²', '15 A')],
  ['wire of 3 mm²', feed('3 mm²', '30 A')],
  ['wire of 20 AWG', feed('20 AWG', '5 A')],
  ['wire of 4 AWG behind 100 A', feed('4 AWG', '100 A', '60 A')],
  ['a battery cable of 35 mm² behind 150 A', feed('35 mm²', '150 A', '100 A')],
  ['a winch cable of 70 mm² behind 250 A', feed('70 mm²', '250 A', '180 A')],
  ['a cable of 4/0 AWG behind 300 A', feed('4/0 AWG', '300 A', '200 A')],
  ['a plastic clip for a one-time clip, neither with a drive', clips('', '')],
  ['a screw for a one-time clip', clips('', 'spare=1').replace('count=4 replaces', 'count=5 replaces')],
  ['a roll of tape of which little is used', taped('10 m', '0.4 m')],
  ['a tube of which a bead is used', taped('290 ml', '15 ml')],
  [
    'a torque in three passes and a turn',
    tightened('thread=M10x1.5 grade=10.9 torque="15 N·m, 25 N·m, 35 N·m, +60°"'),
  ],
  ['two passes alike, as some makers write', tightened('thread=M10x1.5 grade=8.8 torque="40 N·m, 40 N·m"')],
  ['a torque for an oiled thread', tightened('thread=M8x1.25 grade=8.8 torque="19 N·m" friction=oiled')],
  ['a torque for a waxed nut', tightened('thread=M10x1.5 grade=10.9 torque="40 N·m" friction=waxed')],
  ['a torque at a stated nut factor', tightened('thread=M8x1.25 grade=8.8 torque="21 N·m" friction=0.16')],
  ['a stainless bolt', tightened('thread=M8x1.25 grade=A2-70 torque="16 N·m"')],
  ['a bolt whose grade nobody knows', tightened('thread=M10x1.5 torque="60 N·m"')],
  [
    'a sentence that repeats the stated torque',
    `${tightened('thread=M8x1.25 grade=8.8 torque="25 N·m"')} It clicks at 25 N·m.`,
  ],
  [
    'a sentence that repeats it in the other unit',
    `${tightened('thread=M8x1.25 grade=8.8 torque="25 N·m"')} It clicks at 18 lbf·ft.`,
  ],
  [
    'a sentence about a wrench',
    `${tightened('thread=M8x1.25 grade=8.8 torque="25 N·m"')} Use the wrench up to 60 N·m.`,
  ],
  [
    'a sentence about a range',
    `${tightened('thread=M8x1.25 grade=8.8 torque="25 N·m"')} The wrench goes from 5 to 400 N·m.`,
  ],
  ['an inch socket on a metric head that the trade accepts as right', turned('drive="hex 19"', 'hex 19')],
  [
    'a bolt for one time only that is loosened on the way out, and a new one in its place',
    `::tool[Socket]{#socket drive="hex 13"}\n::part[Bracket]{#bracket}\n::fastener[Bolt]{#bolt reuse=no drive="hex 13" holds=bracket with=socket}\n::kit[New bolt]{#new-bolt drive="hex 13" replaces=bolt with=socket}\n\n::step[Change the bolt]{#change}\n\n:loosen[bolt] beside the :part[bracket], :remove[bolt] and :discard[bolt]. :fit[new-bolt].`,
  ],
  [
    'wax on the back of a panel whose lining hangs aside',
    '::part[Lining]{#lining covers=panel}\n::part[Panel]{#panel}\n::supply[Cavity wax]{#wax quantity="50 ml"}\n\n::step[Wax it]{#wax-it}\n\n:move-aside[lining], :apply[wax]{amount="20 ml" on=panel} and :move-back[lining].',
  ],
  ['a load at its limit', rated('60 kg', '60 kg')],
  ['a load in another unit', rated('60 kg', '130 lb')],
  ['a force beside a mass', rated('60 kg', '900 N')],
];

describe('sound and unusual', () => {
  it('is tried in forty ways', () => expect(sound.length).toBeGreaterThanOrEqual(40));

  it.each(sound)('%s', async (_, body) => {
    expect(await told(body)).toEqual([]);
  });
});

const svg = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 90 60"><path d="M0 0h90v60z"/></svg>\n';

describe('a picture whose name is not plain', () => {
  it.each([
    ['an accent', '![The edge](kühler.svg)', 'kühler.svg'],
    ['a space, escaped', '![The edge](front%20edge.svg)', 'front edge.svg'],
    ['an accent, escaped', '![The edge](k%C3%BChler.svg)', 'kühler.svg'],
    ['a space, in brackets', '![The edge](<front edge.svg>)', 'front edge.svg'],
    ['an accent typed as two signs', `![The edge](${'kühler'.normalize('NFD')}.svg)`, 'kühler.svg'],
    [
      'an accent, in a figure',
      ':::figure[The edge]{src=kühler.svg alt="The edge of the trim"}\n:::',
      'kühler.svg',
    ],
  ])('%s', async (_, picture, name) => {
    const body = `::step[Look]{#look}\n\nLook behind the edge.\n\n${picture}`;
    expect(await told({ 'example/guide.md': body, [`example/${name}`]: svg })).toEqual([]);
  });

  it('an accent that the disk keeps as two signs', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'baybook-'));
    onTestFinished(() => rm(folder, { recursive: true, force: true }));
    await writeFile(join(folder, `${'kühler'.normalize('NFD')}.svg`), svg);
    const files = diskFiles(folder);
    expect([...(await files.list()).files.keys()]).toEqual(['kühler.svg']);
    expect(files.read('kühler.svg')?.toString()).toBe(svg);
  });
});

describe('a guide for some builds', () => {
  const guide = (when: string, body: string) =>
    `---\ntitle: Example guide\nplatform: example-van\nwhen: ${when}\n---\n\n## Without {#without}\n\n${['wear', 'tools', 'supplies', 'kit', 'conditions'].map((of) => `::none{of=${of}}\n`).join('')}\n## Work {#work}\n\n${body}`;
  const lamp =
    '::connector[Fog lamp plug]{#fog-plug}\n\n::step[Unplug the lamp]{#unplug}\n\n:disconnect[fog-plug] and :connect[fog-plug].';

  it('says so once, at the top', async () => {
    expect(await told({ 'example/guide.md': guide('fog', lamp) })).toEqual([]);
  });

  it('has nothing that only other builds do', async () => {
    const never = lamp.replace('{#unplug}', '{#unplug when="not fog"}');
    const found = await told({
      'example/guide.md': guide('fog', `${never}\n\n::step[Look]{#look}\n\nLook.`),
    });
    expect(found.map((line) => line.split(':')[0])).toContain('branch-dead');
  });

  it('is told of an option that nobody has', async () => {
    expect(await told({ 'example/guide.md': guide('fogs', lamp) })).toEqual(['condition-unreadable: fogs']);
  });
});
