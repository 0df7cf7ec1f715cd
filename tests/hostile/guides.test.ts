import { resolve } from 'node:path';
import { expect, it } from 'vitest';
import { type Bench, bench } from '../driver.ts';
import { expectText } from '../expect-text.ts';

/**
 * What a slip, a damaged file or ill will may put into a guide. What is said of each stands word for word in
 * `guides.txt`; `UPDATE=1` writes that file anew, and a person reads the difference.
 */
const sound = resolve(import.meta.dirname, '../cases/lamp-cradle-fixture');
const guide = 'lamp-cradle/guide.md';
const cover = '::part[Bumper cover]{#cover}';
const title = 'title: Auxiliary lamp cradle, behind the front bumper cover';
const outline = 'points="-62,0 62,0 62,38 r6 -62,38 r6" unit=mm';
const undo = '::reverse{of=strip-down}';
const fog = '{#fog-plug side=each on=cover when=fog}';

/** A change of one text of the guide into another. */
const swap = (from: string, to: string) => (at: Bench) => at.change(guide, from, to);
const shape = (points: string) => swap(outline, `points="${points}" unit=mm`);

const faults: { readonly [name: string]: (at: Bench) => Promise<unknown> } = {
  'an id with a space': swap(cover, '::part[Bumper cover]{#front cover}'),
  'an id given twice': swap(cover, `${cover}\n${cover}`),
  'an id from the prototype of all objects': swap(cover, '::part[Bumper cover]{#__proto__}'),
  'an id of 260 characters': swap(cover, `::part[Bumper cover]{#${'c'.repeat(260)}}`),
  'an address of 2,400 characters': (at) =>
    at.change('shop.yaml', 'name:', `address: https://guides.example/${'a'.repeat(2400)}/\nname:`),
  'an empty key': (at) => at.change('tools.yaml', 'trim-lever:', ': {name: Nothing}\ntrim-lever:'),
  'a map as a key': (at) =>
    at.change('tools.yaml', 'trim-lever:', '? {a: b}\n: {name: Nothing}\ntrim-lever:'),
  'a map as an inner key': (at) =>
    at.change('tools.yaml', 'trim-lever:', 'saw: {name: Saw, ? {a: b} : c}\ntrim-lever:'),
  'an attribute from it': swap(cover, '::part[Bumper cover]{#cover constructor=1}'),
  'a directive from it': swap('the :tool[trim-lever]', 'the :constructor[trim-lever]'),
  'a key from it': (at) => at.change('tools.yaml', 'trim-lever:', '__proto__: {name: Nothing}\ntrim-lever:'),
  'an option from it': swap('  fog: Front fog lamps', '  fog: Front fog lamps\n  __proto__: Nothing'),
  'a count of zero': swap('count=3 side=each', 'count=0 side=each'),
  'a count below zero': swap('count=3 side=each', 'count=-1 side=each'),
  'a count with a fraction': swap('count=3 side=each', 'count=1.5 side=each'),
  'a torque that is a length': swap('torque="25 N·m"', 'torque="25 mm"'),
  'a torque beyond all sense': swap('torque="25 N·m"', 'torque="1000000000 N·m"'),
  'a range the wrong way round': swap('expect="180..240 mm"', 'expect="240..180 mm"'),
  'a reversal of its own section': swap(undo, '::reverse{of=refit}'),
  'a reversal twice': swap(undo, `${undo}\n\n${undo}`),
  'a reversal of what a reversal makes': swap(undo, `${undo}\n\n::reverse{of=refit-arch}`),
  'a condition that nests beyond all sense': swap(
    fog,
    `{#fog-plug side=each on=cover when="${'not ('.repeat(2000)}fog${')'.repeat(2000)}"}`,
  ),
  'a day that is not in the calendar': swap('updated: 2026-10-02', 'updated: 2026-02-31'),
  'a control character in a title': swap(title, 'title: "Cradle\\0"'),
  'a platform that is not there': swap('platform: larkspur-dray', 'platform: constructor'),
  'a platform that is empty': (at) => at.write('platforms/larkspur-dray.md', ''),
  'a tool crib that is a list': (at) => at.write('tools.yaml', '- trim-lever\n'),
  'front matter that is never closed': (at) => at.write(guide, `---\n${title}\n\n## Strip down {#off}\n`),
  '4,097 builds and more': swap(
    '  fog: Front fog lamps',
    `  fog: Front fog lamps\n${Array.from({ length: 12 }, (_, i) => `  extra-${i}: Extra ${i}`).join('\n')}`,
  ),
  'more emphasis than a paragraph holds': (at) =>
    at.change(guide, undo, `${undo}\n\n${'*a_'.repeat(17_000)}`),
  'HTML in a label': swap(cover, '::part[<img src=x onerror=alert(1)>Cover]{#cover}'),
  'an outline of two points': shape('-62,0 62,0'),
  'an outline that encloses nothing': shape('-62,0 0,0 62,0'),
  'an outline that crosses itself': shape('-62,0 62,38 62,0 -62,38'),
  'a corner that is no number': shape('-62,0 NaN,0 62,38'),
  'a corner a million metres off': shape('-1000000000,0 62,0 62,38'),
  'units mixed in one list': shape('-62 mm,0 62,0 2 in,38'),
  'a pattern on a line and a circle': swap(
    '::keep-out',
    '::pattern[Vents]{#vents count=4 diameter="5 mm" along="-20,90 20,90" centre="0,90" circle="20 mm" unit=mm}\n::keep-out',
  ),
  'a drawing that breaks off': async (at) => {
    await at.write(
      'lamp-cradle/notch.dxf',
      '0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n0\nLINE\n10\n0\n',
    );
    await at.change(guide, outline, 'from=notch.dxf');
  },
  'a drawing a million metres wide': async (at) => {
    const wide = '<svg xmlns="http://www.w3.org/2000/svg" width="1000000000mm" viewBox="0 0 1000000000 40">';
    await at.write('lamp-cradle/notch.svg', `${wide}<path d="M0 0H1000000000V40H0Z"/></svg>`);
    await at.change(guide, outline, 'from=notch.svg');
  },
  'a drawing from outside the workspace': swap(outline, 'from=../../notch.dxf'),
};

it('hostile guides are each told of in words, and none breaks the run', async () => {
  const told: string[] = [];
  for (const [name, spoil] of Object.entries(faults)) {
    const at = await bench(sound);
    await spoil(at);
    const { code, out, err } = await at.check();
    expect(code, name).toBe(1);
    expect(err, name).toBe('');
    told.push(`# ${name}\n\n${out.replace(/.{400,}/g, (line) => `${line.slice(0, 120)}…`)}`);
  }
  expectText(told.join('\n'), resolve(import.meta.dirname, 'guides.txt'));
}, 240_000);

it('a title of five thousand letters without a space is built', async () => {
  const at = await bench(sound);
  await at.change(guide, title, `title: ${'W'.repeat(5000)}`);
  expect((await at.build()).code).toBe(0);
}, 240_000);

it('Liquid, HTML and quotation marks in every name come out as they were typed', async () => {
  const at = await bench(sound);
  const rude = `{{ 1 | plus: 1 }} {% raw %} </title><script>alert(1)</script> &amp; '`;
  await at.change(guide, title, `title: "${rude}"`);
  await at.change('shop.yaml', 'name:', `name: "${rude}" #`);
  await at.change('platforms/larkspur-dray.md', 'title:', `title: "${rude}" #`);
  await at.change('tools.yaml', 'name: Trim lever', `name: "${rude}"`);
  expect(await at.build()).toMatchObject({ code: 0, err: '' });
  for (const [path, bytes] of await at.site()) {
    if (!path.endsWith('.html')) continue;
    const page = bytes.toString('utf8');
    expect(page, path).not.toContain('<script>alert(1)');
    expect(page, path).not.toContain('2 {% raw');
  }
  expect(await at.page('index.html')).toContain('{{ 1 | plus: 1 }} {% raw %}');
}, 240_000);

it('a fault leaves the last site as it was', async () => {
  const at = await bench(sound);
  expect((await at.build()).code).toBe(0);
  const before = await at.site();
  await at.change(guide, cover, '');
  expect((await at.build()).code).toBe(1);
  expect(await at.site()).toEqual(before);
}, 240_000);
