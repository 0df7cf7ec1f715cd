import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import * as fixture from '../pages/fixture.ts';
import { paragraph } from '../pages/fixture.ts';
import { buildSite } from './build.ts';
import { files, filesBelow, inspection, outputFolder } from './workspace.ts';

const nowhere = fixture.guide.title.at;

/** The fixture with a link in its opening. */
function linking(href: string) {
  const link = {
    type: 'element' as const,
    tagName: 'a',
    properties: { href },
    children: [{ type: 'text' as const, value: 'there', at: null }],
    at: nowhere,
  };
  return { ...fixture.guide, opening: [paragraph(link)] };
}

describe('a site', () => {
  it('has a page for each guide and platform, data with a schema, pictures and assets', async () => {
    const folder = await outputFolder();
    const outcome = await buildSite(inspection(), files(), folder);
    expect(outcome).toMatchObject({ ok: true, removed: [] });
    const site = await filesBelow(folder);
    for (const path of [
      'index.html',
      'platforms/larkspur-dray/index.html',
      'guides/lamp-cradle/index.html',
      'guides/lamp-cradle/guide.json',
      'schema/guide.schema.json',
      'assets/guide.js',
      'assets/tokens.css',
    ]) {
      expect([...site.keys()]).toContain(path);
    }
    expect([...site.keys()].filter((path) => path.startsWith('pictures/'))).toHaveLength(1);
    const schema = JSON.parse(site.get('schema/guide.schema.json') ?? '');
    const json = JSON.parse(
      Buffer.from(site.get('guides/lamp-cradle/guide.json') ?? '', 'latin1').toString(),
    );
    expect(new Ajv({ allowUnionTypes: true }).validate(schema, json)).toBe(true);
  });

  it('is the same bytes whenever and wherever it is built', async () => {
    const [one, other] = [await outputFolder(), await outputFolder()];
    await buildSite(inspection(), files(), one);
    await buildSite(inspection(), files(), other);
    expect(await filesBelow(other)).toEqual(await filesBelow(one));
  });

  it('is not touched while a guide has an error', async () => {
    const folder = await outputFolder();
    await buildSite(inspection(), files(), folder);
    const before = await filesBelow(folder);
    const error = {
      code: 'tool-undeclared',
      severity: 'error',
      message: 'x',
      at: nowhere,
      notes: [],
    } as const;
    const faulty = inspection(fixture.titled('Another title'), { findings: [error], soundGuides: new Set() });
    expect(await buildSite(faulty, files(), folder)).toMatchObject({ ok: false });
    expect(await filesBelow(folder)).toEqual(before);
  });

  it('holds the sound guides alone when it keeps going', async () => {
    const folder = await outputFolder();
    const error = {
      code: 'tool-undeclared',
      severity: 'error',
      message: 'x',
      at: nowhere,
      notes: [],
    } as const;
    const faulty = inspection(fixture.guide, { findings: [error], soundGuides: new Set() });
    expect(await buildSite(faulty, files(), folder, { keepGoing: true })).toMatchObject({ ok: true });
    const site = await filesBelow(folder);
    expect([...site.keys()].filter((path) => path.startsWith('guides/'))).toEqual([]);
    expect(site.get('index.html')).toContain('No guide yet.');
  });

  it('is not touched where a layout of the shop fails, and the fault has a place', async () => {
    const folder = await outputFolder();
    await buildSite(inspection(), files(), folder);
    const before = await filesBelow(folder);
    const own = { 'templates/index.liquid': '<h1>{{ headline }}</h1>' };
    const found = inspection();
    const shop = { ...found.shop, files: new Map([['templates/index.liquid', 10]]) };
    const outcome = await buildSite({ ...found, shop }, files(own), folder);
    expect(outcome).toMatchObject({
      ok: false,
      problems: [
        expect.stringMatching(/^index\.html could not be made: undefined variable: headline.*line:1/),
      ],
    });
    expect(await filesBelow(folder)).toEqual(before);
  });

  it('takes a layout and a style of the shop in the place of the built-in ones, and no other file', async () => {
    const folder = await outputFolder();
    const own = {
      'templates/step-links.liquid': '<em>see the steps</em>',
      'templates/page.css': 'body { color: teal }',
      'templates/scripts/guide.ts': 'alert(1)',
      'templates/more.css': 'x',
    };
    const found = inspection();
    const shop = { ...found.shop, files: new Map(Object.keys(own).map((path) => [path, 10])) };
    await buildSite({ ...found, shop }, files(own), folder);
    const site = await filesBelow(folder);
    expect(site.get('guides/lamp-cradle/index.html')).toContain('<em>see the steps</em>');
    expect(site.get('assets/page.css')).toBe('body { color: teal }');
    expect(site.get('assets/guide.js')).not.toContain('alert(1)');
    expect([...site.keys()]).not.toContain('assets/more.css');
  });

  it('is not touched where a layout or style of the shop would ask another host', async () => {
    const folder = await outputFolder();
    await buildSite(inspection(), files(), folder);
    const before = await filesBelow(folder);
    const own = {
      'templates/step-links.liquid': '<p>\n<img src="https://pictures.example/a.png" alt=""></p>',
      'templates/page.css': 'body { color: teal }\n@import "https://styles.example/a.css";',
    };
    const found = inspection();
    const shop = { ...found.shop, files: new Map(Object.keys(own).map((path) => [path, 10])) };
    expect(await buildSite({ ...found, shop }, files(own), folder)).toEqual({
      ok: false,
      problems: [
        'templates/page.css:2 asks another host: "https://styles.example/a.css"',
        expect.stringMatching(/lamp-cradle.html could not be made.*file:step-links.liquid, line:2, col:6/),
        expect.stringMatching(/index.html could not be made.*file:step-links.liquid, line:2, col:6/),
      ],
    });
    expect(await filesBelow(folder)).toEqual(before);
  });

  it('turns links between guides, platforms and files into links of the site', async () => {
    const folder = await outputFolder();
    const found = inspection(linking('../platforms/larkspur-dray.md#know'));
    await buildSite(found, files(), folder);
    expect((await filesBelow(folder)).get('guides/lamp-cradle/index.html')).toContain(
      'href="../../platforms/larkspur-dray/index.html#know"',
    );
    const own = { 'lamp-cradle/data sheet.pdf': '%PDF-' };
    const other = inspection(linking('data%20sheet.pdf'));
    const shop = { ...other.shop, files: new Map([['lamp-cradle/data sheet.pdf', 5]]) };
    await buildSite({ ...other, shop }, files(own), folder);
    const site = await filesBelow(folder);
    expect(site.get('files/lamp-cradle/data sheet.pdf')).toBe('%PDF-');
    expect(site.get('guides/lamp-cradle/index.html')).toContain(
      'href="../../files/lamp-cradle/data%20sheet.pdf"',
    );
  });

  it('is not touched where a link of the built pages leads nowhere', async () => {
    const folder = await outputFolder();
    const outcome = await buildSite(
      inspection(linking('../platforms/larkspur-dray.md#nowhere')),
      files(),
      folder,
    );
    expect(outcome).toEqual({
      ok: false,
      problems: [
        'guides/lamp-cradle/index.html links to ../../platforms/larkspur-dray/index.html#nowhere, which leads nowhere',
      ],
    });
    expect(await filesBelow(folder)).toEqual(new Map());
  });

  it('says which file of someone else is in the way', async () => {
    const folder = await outputFolder();
    await buildSite(inspection(), files(), folder);
    await writeFile(join(folder, '.baybook-files.json'), '[]');
    await writeFile(join(folder, 'index.html'), 'mine');
    expect(await buildSite(inspection(), files(), folder)).toEqual({
      ok: false,
      problems: [
        'index.html in the output folder was not written by Baybook; move it away, or choose another folder',
      ],
    });
  });
});
