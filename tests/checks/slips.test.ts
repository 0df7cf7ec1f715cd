import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { describe, expect, it } from 'vitest';
import { renderText } from '../../src/diagnostics/render-text.ts';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import { readFonts } from '../../src/site/fonts.ts';
import { noStore } from '../../src/store/store.ts';
import { expectText } from '../expect-text.ts';

const folder = resolve(import.meta.dirname, 'slips');
const fonts = readFonts();

/** A small shop with one guide, in which nothing is wrong. */
const sound: { readonly [path: string]: Uint8Array } = readFolder(join(folder, 'workspace'));
const guide = 'console/guide.md';

/** What a new author does to a file: some words become others. */
type Slip = readonly [name: string, from: string, to: string, file?: string];

/** What goes wrong with whole files; `null` takes one away. */
type FileSlip = readonly [name: string, files: { readonly [path: string]: string | Uint8Array | null }];

const edge = '::step[Free the edge]{#edge time="2..4 min"}';
const nut = '{#nut count=4 thread=M8x1.25 grade=8 drive="hex 13" torque="25 N·m" holds=console}';
const screw = '::fastener[Lower screw]{#lower-screw drive=T20 count=2 holds=cover}';
const figure = 'src=pictures/edge.svg';

/** Slips of people who write their first guides. What each is told stands in `slips/`, by its name. */
const slips: readonly Slip[] = [
  // Directives
  ['name-misspelt', edge, edge.replace('step', 'stepp')],
  ['name-of-another-trade', edge, edge.replace('step', 'task')],
  ['name-in-capitals', edge, edge.replace('step', 'Step')],
  ['one-colon-too-many', '::tool{#trim-lever}', ':::tool{#trim-lever}'],
  ['one-colon-too-few', edge, edge.slice(1)],
  ['space-after-colons', edge, edge.replace('::', ':: ')],
  ['container-open', 'Warm it first.\n:::\n', 'Warm it first.\n'],
  ['container-closed-twice', 'Warm it first.\n:::\n', 'Warm it first.\n:::\n\n:::\n'],
  ['brace-open', edge, edge.replace('}', '')],
  ['bracket-open', edge, edge.replace(']', '')],
  ['parentheses-for-brackets', ':remove[edge-clip]', ':remove(edge-clip)'],
  ['brace-apart', ':remove[lower-screw]{with=bit-t20}', ':remove[lower-screw] {with=bit-t20}'],
  ['quotes-curly', 'time="2..4 min"', 'time=“2..4 min”'],
  ['quotes-left-out', 'time="2..4 min"', 'time=2..4 min'],
  ['quote-open', 'time="2..4 min"', 'time="2..4 min'],
  ['comma-between', 'people=2 time="4 min"', 'people=2, time="4 min"'],
  ['colon-for-equals', 'people=2 time="4 min"', 'people:2 time="4 min"'],
  ['attribute-misspelt', 'people=2 time="4 min"', 'poeple=2 time="4 min"'],
  ['tab-before-step', edge, `\t${edge}`],
  ['step-in-list', edge, `- ${edge}`],
  ['space-before-bracket', ':remove[edge-clip]', ':remove [edge-clip]'],
  ['two-colons-in-sentence', ':remove[edge-clip]', '::remove[edge-clip]'],
  ['verb-unknown', ':remove[edge-clip]', ':unscrew[edge-clip]'],
  ['container-of-two-colons', ':::warning[Flying chips]', '::warning[Flying chips]'],
  ['container-misspelt-with-two', ':::warning[Flying chips]', '::warnning[Flying chips]'],
  ['container-closed-with-two', 'while you cut.\n:::', 'while you cut.\n::'],
  ['container-closed-indented', 'Warm it first.\n:::', 'Warm it first.\n    :::'],
  ['container-closed-by-name', 'Warm it first.\n:::\n', 'Warm it first.\n:::notice\n'],
  ['where-without-when', '{when=fog} Then', ' Then'],
  ['where-with-if', '{when=fog} Then', '{if=fog} Then'],
  // Ids
  ['template-id-in-capitals', '{#notch panel', '{#Notch panel'],
  ['id-in-capitals', edge, edge.replace('#edge', '#Edge')],
  ['id-with-space', '{#cable-hole centre', '{#cable hole centre'],
  ['id-left-out', edge, '::step[Free the edge]{time="2..4 min"}'],
  ['id-without-hash', '{#lower-screw drive', '{lower-screw drive'],
  ['id-twice', screw, `${screw}\n${screw.replace('Lower', 'Upper')}`],
  ['id-misspelt', ':remove[edge-clip]', ':remove[edge-clips]'],
  ['label-for-id', ':remove[edge-clip]', ':remove[Edge clip]'],
  ['label-left-out', screw, screw.replace('[Lower screw]', '')],
  ['heading-without-id', '## Fit {#fit}', '## Fit'],
  // Values
  ['unit-unspoken', 'torque="25 N·m"', 'torque="25"'],
  ['unit-misspelt', 'torque="25 N·m"', 'torque="25 Nmm"'],
  ['unit-of-another-kind', 'time="4 min"', 'time="4 mm"'],
  ['decimal-comma', 'diameter="9 mm"}\n::supply', 'diameter="9,5 mm"}\n::supply'],
  ['decimal-comma-point', 'centre="0,40"', 'centre="0,5,40"'],
  ['count-in-words', nut, nut.replace('count=4', 'count=four')],
  ['count-of-none', nut, nut.replace('count=4', 'count=0')],
  ['time-negative', 'time="4 min"', 'time="-4 min"'],
  ['time-of-nothing', 'time="4 min"', 'time="0 min"'],
  ['time-backwards', 'time="2..4 min"', 'time="4..2 min"'],
  ['side-wrong', 'count=2 holds', 'count=2 side=both holds'],
  ['drive-misspelt', 'drive=T20 count', 'drive=torx20 count'],
  ['thread-misspelt', 'thread=M8x1.25', 'thread=8x1.25'],
  ['thread-with-comma', 'thread=M8x1.25', 'thread=M8x1,25'],
  ['condition-broken', '{when=fog} Then', '{when="fog &"} Then'],
  ['type-unknown', 'type=push-clip', 'type=Push-Clip'],
  ['grade-with-comma', 'grade=8', 'grade="8,8"'],
  ['condition-unknown', '{when=fog} Then', '{when=fogs} Then'],
  ['condition-in-capitals', '{when=fog} Then', '{when=Fog} Then'],
  ['condition-with-mark', '{when=fog} Then', '{when="!fog"} Then'],
  ['torque-in-words', 'torque-60 socket-13"}', 'torque-60 socket-13"}. See that they hold at 35 N·m'],
  ['article-before-action', ':remove[edge-clip]', 'the :remove[edge-clip]'],
  ['wrench-without-torque', ' torque="25 N·m"', ''],
  ['label-in-plural', '[Lower screw]', '[Lower screws]'],
  ['verb-of-the-trade', ':remove[edge-clip]', ':unclip[edge-clip]'],
  ['mark-without-dash', '- :mark[B]{at="58%,40%"}', ':mark[B]{at="58%,40%"}'],
  [
    'warning-above-its-step',
    '::step[Lift the cover away]',
    ':::caution[Sharp edge]\nThe edge can cut a hand. Wear gloves.\n:::\n\n::step[Lift the cover away]',
  ],
  ['verb-of-a-driver', ':remove[lower-screw]', ':unscrew[lower-screw]'],
  ['hole-misspelt', ':drill[cable-hole]', ':drill[cable-holes]'],
  ['plug-on-a-screw', 'on=cover when', 'on=lower-screw when'],
  ['side-of-a-step', '{#edge time', '{#edge side=each time'],
  ['need-undeclared', '{#cover}', '{#cover needs=key-out}'],
  // What the guide says
  ['tool-not-in-crib', '::tool{#trim-lever}', '::tool{#trim-lifter}'],
  ['none-misspelt', '::none{of=conditions}', '::none{of=condition}'],
  ['wrench-not-named', '{with="torque-60 socket-13"}', '{with=socket-13}'],
  ['kit-left-out', '::kit[Console]{#console}\n', ''],
  ['nuts-never-tightened', ' and then :tighten[nut]{with="torque-60 socket-13"}', ''],
  ['wear-undeclared', '::wear{#eye-protection}\n', ''],
  ['wear-as-tool', '::wear{#eye-protection}', '::tool{#eye-protection}'],
  ['none-with-label', '::none{of=conditions}', '::none[conditions]'],
  ['ids-with-comma', '{with="torque-60 socket-13"}', '{with=torque-60,socket-13}'],
  ['tool-undeclared', 'behind the edge.', 'behind the edge. Warm it with the :tool[heat-gun].'],
  ['removal-forgotten', ':remove[edge-clip] and ', 'Mind the :fastener[edge-clip]. '],
  ['fastener-never-back', '::reverse{of=strip-down}', '::reverse{of=strip-down except=edge}'],
  ['plug-forgotten', ':where[Reach behind and :disconnect[lamp-plug].]{when=fog} Then', 'Then'],
  [
    'step-without-heading',
    '## What you need {#need}\n\n',
    `${edge.replace('#edge', '#first')}\n\nLook.\n\n## What you need {#need}\n\n`,
  ],
  [
    'action-outside-step',
    '## Strip down {#strip-down}\n',
    '## Strip down {#strip-down}\n\n:loosen[lower-screw].\n',
  ],
  ['nothing-said-of-conditions', '::none{of=conditions}\n', ''],
  ['template-without-datum', '::datum[Middle of the cover]{axis=vertical at="0 mm"}\n', ''],
  ['template-without-unit', '-30,20 r4" unit=mm', '-30,20 r4"'],
  [
    'template-units-inside',
    '"-30,0 30,0 30,20 r4 -30,20 r4" unit=mm',
    '"-30mm,0mm 30mm,0mm 30mm,20mm -30mm,20mm"',
  ],
  ['panel-unknown', 'panel=cover', 'panel=bumper'],
  ['html-in-text', 'Then :remove[cover]', 'Then <b>:remove[cover]</b>'],
  // Pictures and links
  ['picture-missing', figure, 'src=pictures/edges.svg'],
  ['picture-in-other-case', figure, 'src=pictures/Edge.svg'],
  ['picture-of-the-web', figure, 'src=https://pictures.example/edge.jpg'],
  ['picture-with-backslash', figure, 'src=pictures\\edge.svg'],
  ['picture-without-words', ' alt="Lower edge of the cover, seen from below"', ''],
  ['figure-without-picture', 'src=pictures/edge.svg ', ''],
  ['figure-key-without-mark', '- :mark[A]{at="31%,44%"} lever', '- lever'],
  ['link-without-https', 'Hold the', 'As [they say](www.example.com). Hold the'],
  ['link-to-nowhere', 'Hold the', 'As [before](#strip). Hold the'],
  // Front matter and lists
  [
    'front-matter-missing',
    '---\ntitle: Console behind the lower cover\nplatform: example-van\nrevision: 2\ncontents:\n  console: 1\n  nut: 4\n---\n',
    '',
  ],
  ['front-matter-open', '  nut: 4\n---\n', '  nut: 4\n'],
  ['front-matter-of-two-hyphens', '---\ntitle', '--\ntitle'],
  ['front-matter-late', '---\ntitle', '\n---\ntitle'],
  ['yaml-tab', '  console: 1', '\tconsole: 1'],
  ['yaml-twice', 'revision: 2', 'revision: 2\nrevision: 3'],
  ['yaml-colon', 'title: Console behind', 'title: Console: behind'],
  ['yaml-no-space', 'revision: 2', 'revision:2'],
  ['yaml-misspelt', 'platform: example-van', 'plattform: example-van'],
  ['platform-unknown', 'platform: example-van', 'platform: Example van'],
  ['date-of-the-shop', 'revision: 2', 'revision: 2\nupdated: 2.10.2026'],
  ['packing-list-in-words', '  nut: 4', '  nut: four'],
  ['crib-without-name', 'trim-lever: {name: Trim lever}', 'trim-lever: Trim lever', 'tools.yaml'],
  ['crib-attribute-unknown', 'drive: T20', 'size: 20', 'tools.yaml'],
  ['crib-brace-open', '{name: Trim lever}', '{name: Trim lever', 'tools.yaml'],
  ['accent-without-quotes', 'crew: 2', 'accent: #0b6e5f', 'shop.yaml'],
];

const words = (path: string) => Buffer.from(sound[path] ?? []).toString();

/** The strip-down of the guide as a procedure that it places. */
const stripDown = words(guide).split(/(?=::step\[Free)|(?=## Cut)/)[1] ?? '';
const steps = stripDown.replace('src=', 'src=../console/');
const procedure = `---\ntitle: Lower cover off\noptions:\n  fog: Front fog lamps\n---\n\n${steps}`;
const placing = (of: string) =>
  words(guide).replace(stripDown, () => `::procedure{${of} options="fog=fog"}\n\n`);
const placed = { [guide]: placing('of=cover-off'), 'procedures/cover-off.md': procedure };

const fileSlips: readonly FileSlip[] = [
  ['procedure-misnamed', { ...placed, [guide]: placing('of=cover-of') }],
  ['procedure-without-of', { ...placed, [guide]: placing('#cover-off') }],
  [
    'procedure-file-misnamed',
    { ...placed, 'procedures/cover-off.md': null, 'procedures/cover.md': procedure },
  ],
  ['procedure-without-front-matter', { ...placed, 'procedures/cover-off.md': steps }],
  [
    'procedure-step-misspelt',
    { ...placed, 'procedures/cover-off.md': procedure.replace('::step', '::stpe') },
  ],
  [
    'procedure-id-misspelt',
    { ...placed, 'procedures/cover-off.md': procedure.replace('[edge-clip]', '[edge-clop]') },
  ],
  ['crib-missing', { 'tools.yaml': null }],
  ['crib-of-another-ending', { 'tools.yaml': null, 'tools.yml': words('tools.yaml') }],
  ['types-missing', { 'fasteners.yaml': null }],
  ['supplies-missing', { [guide]: words(guide).replace('::supply[Masking tape]', '::supply') }],
  ['shop-missing', { 'shop.yaml': null, 'Shop.yml': words('shop.yaml') }],
  ['platform-missing', { 'platforms/example-van.md': null }],
  [
    'folder-with-capital',
    { [guide]: null, 'Console/guide.md': words(guide).replace(figure, 'src=../console/pictures/edge.svg') },
  ],
  ['not-utf8', { 'tools.yaml': Buffer.from(words('tools.yaml'), 'utf16le') }],
  ['picture-without-folder', { [guide]: words(guide).replace(figure, 'src=edge.svg') }],
];

/** Ways of writing that are not ours and are understood all the same. */
const understood: readonly Slip[] = [
  ['a torque in Nm', 'torque="25 N·m"', 'torque="25 Nm"'],
  ['a torque in ft lbs', 'torque="25 N·m"', 'torque="18 ft lbs"'],
  ['a thread with a hyphen', 'thread=M8x1.25', 'thread=M8-1.25'],
  ['a range with a dash', 'time="2..4 min"', 'time="2–4 min"'],
  ['a stray picture path', figure, 'src=./pictures/edge.svg'],
];

describe('a slip of a new author', () => {
  it('is none in the guide that all of them start from', async () => {
    expect(await told(sound)).toBe('');
    expect(await told({ ...sound, ...placed })).toBe('');
  });

  for (const [name, from, to, file] of slips) {
    it(name, async () => {
      expectText(`${await told(slipped(from, to, file))}\n`, join(folder, `${name}.txt`));
    });
  }

  it.each(fileSlips)('%s', async (name, files) => {
    const changed = Object.entries({ ...sound, ...files }).flatMap(([path, text]) =>
      text === null ? [] : [[path, text] as const],
    );
    expectText(`${await told(Object.fromEntries(changed))}\n`, join(folder, `${name}.txt`));
  });

  it('gives one finding, whichever it is', () => {
    const texts = readdirSync(folder).filter((name) => name.endsWith('.txt'));
    const counted = texts.map((name) => {
      const text = readFileSync(join(folder, name), 'utf8');
      return [name, text.match(/^\S+: (?:error|warning) [a-z0-9-]+$/gm)?.length ?? 0] as const;
    });
    expect(counted.length).toBeGreaterThan(118);
    expect(counted.filter(([, count]) => count !== 1)).toEqual([]);
  });

  for (const [name, from, to] of understood) {
    it(`is not ${name}`, async () => {
      expect(await told(slipped(from, to))).toBe('');
    });
  }

  it('has no text of a slip that is gone', () => {
    const texts = readdirSync(folder).filter((name) => name.endsWith('.txt'));
    const names = [...slips, ...fileSlips].map(([name]) => `${name}.txt`);
    expect(texts.filter((name) => !names.includes(name))).toEqual([]);
  });
});

function slipped(from: string, to: string, file = guide) {
  const text = words(file);
  expect(text.split(from).length).toBe(2);
  return { ...sound, [file]: text.replace(from, () => to) };
}

async function told(files: { readonly [path: string]: string | Uint8Array }): Promise<string> {
  const { findings, sources } = await inspect(memoryFiles(files), noStore, await fonts);
  return renderText(findings, { sources, prefix: '' }, { colour: false, width: 100 });
}

function readFolder(root: string): { readonly [path: string]: Uint8Array } {
  const entries = readdirSync(root, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
  const paths = entries.map(({ parentPath, name }) => join(parentPath, name)).sort();
  return Object.fromEntries(
    paths.map((path) => [relative(root, path).split(sep).join('/'), readFileSync(path)]),
  );
}
