import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { kitTyped, readOption, yamlValue } from '../../src/desk/facts.ts';
import { asked, baybook, bench, repository } from '../driver.ts';

async function emptyFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'baybook-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  return folder;
}

/** Fills marked places as an author would, each by the words that stand before it in the text. */
async function fill(path: string, ways: readonly (readonly [RegExp, string])[]): Promise<void> {
  let text = await readFile(path, 'utf8');
  for (const [place, words] of ways) {
    const found = new RegExp(place, 'gm');
    expect(text, `${place}`).toMatch(found);
    text = text.replaceAll(found, words);
  }
  await writeFile(path, text);
}

const filled: readonly (readonly [RegExp, string])[] = [
  [/^FILL IN in two sentences.*/, 'The cradle carries two lamps behind the grille.'],
  [/^FILL IN what is worn.*/, '::wear{#gloves}'],
  [/^FILL IN the tools.*/, '::tool{#bit-t25}'],
  [/^FILL IN the supplies.*/, '::none{of=supplies}'],
  [/^FILL IN what must hold.*/, '::none{of=conditions}'],
  [
    /^FILL IN each part.*/,
    '::part[Trim]{#trim}\n::fastener[Trim screw]{#trim-screw drive=T25 count=2 holds=trim}',
  ],
  [/FILL IN what is done first/, 'Free the trim'],
  [
    /^FILL IN what the hands do.*/,
    'Put on the :wear[gloves]. Then :remove[trim-screw]{with=bit-t25} and :remove[trim].',
  ],
  [/FILL IN what is tried.*/, 'Both lamps light'],
];

it('leads from an empty folder to a guide that passes once its marked places are filled', async () => {
  const folder = await emptyFolder();
  const guides = join(folder, 'guides');
  expect((await asked(folder, ['Kerb Lane Fitting', 'metric'], 'new', 'workspace')).code).toBe(0);
  expect((await asked(folder, ['Tansy Ferret', 'fog=Front fog lamps'], 'new', 'platform')).code).toBe(0);
  const answers = ['Lamp cradle, behind the grille', 'tow=Tow bar', '', 'Cradle', 'M8 flange nut x4', ''];
  const made = await asked(folder, answers, 'new', 'guide');
  expect(made.out).toContain('wrote guides/lamp-cradle/guide.md\n');

  const left = await baybook(folder, 'check');
  // One finding for each place that is left, with the whole of what it asks for.
  expect([...new Set(left.out.match(/(?<=error )[a-z-]+/g))]).toEqual(['place-unfilled']);
  expect(left.out).toContain('a line each, as in `::wear{#gloves}`, or `::none{of=wear}`\n');
  await fill(join(guides, 'tools.yaml'), [[/^# FILL IN.*\n/, '']]);
  await fill(join(guides, 'platforms/tansy-ferret.md'), [[/^FILL IN.*/, 'The small van.']]);
  await fill(join(guides, 'lamp-cradle/guide.md'), [
    ...filled,
    [/^FILL IN what is different with the option tow.*/, ':where[The tow bar stays on.]{when=tow}'],
  ]);
  expect((await baybook(folder, 'check')).out).toBe('1 guide checked: no errors, no warnings\n');
}, 60_000);

it('takes flags from a script, and says which is missing', async () => {
  const { folder, check } = await bench({ 'shop.yaml': 'name: Example Fitting\n' });
  const missing = await baybook(folder, 'new', 'platform');
  expect(missing).toEqual({
    code: 2,
    out: '',
    err: 'baybook: --title is missing, and there is nobody to ask\n',
  });
  const early = await baybook(folder, 'new', 'guide', '--title', 'Lamp');
  expect(early.err).toBe('baybook: there is no platform yet; begin with baybook new platform\n');
  await baybook(folder, 'new', 'platform', 'van', '--title', 'Van', '--option', 'fog=Front fog lamps');
  const wrong = await baybook(folder, 'new', 'guide', '--title', 'Lamp', '--platform', 'vam');
  expect(wrong.err).toBe('baybook: there is no platform "vam"; did you mean "van"?\n');
  const guide = await baybook(folder, 'new', 'guide', '--title', 'Lamp, left', '--kit', 'LED lamp x2');
  expect(guide.out).toContain('wrote guides/lamp/guide.md\n');
  expect((await check('lamp')).out).toContain('place-unfilled');
  const procedure = await baybook(folder, 'new', 'procedure', '--title', 'Isolate the battery');
  expect(procedure.out).toContain('wrote guides/procedures/isolate-the-battery.md\n');
});

it('never overwrites', async () => {
  const { folder } = await bench({
    'shop.yaml': 'name: Example Fitting\n',
    'platforms/van.md': '---\ntitle: Van\n---\n\nA van.\n',
    'lamp/guide.md': 'mine\n',
  });
  const again = [
    ['new', 'workspace', '--name', 'Other', '--units', 'us'],
    ['new', 'platform', 'van', '--title', 'Other'],
    ['new', 'guide', 'lamp', '--title', 'Other'],
  ];
  for (const args of again) {
    const { code, out, err } = await baybook(folder, ...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/^baybook: guides\/\S+ is there already, and is left as it is\n$/);
  }
  expect(await readFile(join(folder, 'guides/shop.yaml'), 'utf8')).toBe('name: Example Fitting\n');
  expect(await readFile(join(folder, 'guides/lamp/guide.md'), 'utf8')).toBe('mine\n');
});

it('begins with a guide for another platform, and marks what was measured there', async () => {
  const { folder, check } = await bench(join(repository, 'tests/cases/lamp-cradle-fixture'));
  await baybook(folder, 'new', 'platform', 'sorrel-wicket', '--title', 'Sorrel Wicket');
  const args = [
    'wicket-cradle',
    '--title',
    'Lamp cradle',
    '--from',
    'lamp-cradle',
    '--platform',
    'sorrel-wicket',
  ];
  const made = await baybook(folder, 'new', 'guide', ...args);
  expect(made.code).toBe(0);
  const before = await readFile(join(folder, 'guides/lamp-cradle/guide.md'), 'utf8');
  const text = await readFile(join(folder, 'guides/wicket-cradle/guide.md'), 'utf8');
  expect(text).toContain('\ntitle: Lamp cradle\nplatform: sorrel-wicket\n');
  expect(text).not.toMatch(/^(?:revision|updated|changes):/m);
  const counted = (of: RegExp, all: string) => all.match(of)?.length ?? 0;
  const doubtful = counted(/^:::?(?:fastener|cut-template|rating)\[|^:::figure/gm, before);
  expect(doubtful).toBeGreaterThan(3);
  expect(counted(/FILL IN/g, text)).toBe(doubtful + 1);
  const told = (await check('wicket-cradle')).out;
  expect(told.match(/guide\.md:.* place-unfilled/g)).toHaveLength(doubtful + 1);
}, 60_000);

it('reads what is typed', () => {
  expect(readOption('fog=Front fog lamps')).toEqual({ id: 'fog', name: 'Front fog lamps' });
  expect(readOption('Tow bar')).toEqual({ id: 'tow-bar', name: 'Tow bar' });
  expect(readOption('–')).toBeNull();
  expect(kitTyped(['Spacer, 12 mm x2', 'Spacer, 18 mm', 'M8 nut × 4'])).toEqual([
    { id: 'spacer', label: 'Spacer, 12 mm', count: 2 },
    { id: 'spacer-2', label: 'Spacer, 18 mm', count: 1 },
    { id: 'm8-nut', label: 'M8 nut', count: 4 },
  ]);
  expect(['Lamp cradle, left', 'Cover: front', 'no', '12 V'].map(yamlValue)).toEqual([
    '"Lamp cradle, left"',
    '"Cover: front"',
    '"no"',
    '"12 V"',
  ]);
});
