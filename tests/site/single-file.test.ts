import { createHash } from 'node:crypto';
import { inflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { overBudgetWords, SINGLE_FILE_BUDGET, weightWords } from '../../src/site/guides/single-file.ts';
import { buildSite } from './build.ts';
import { files, filesBelow, inspection, outputFolder } from './workspace.ts';

describe('a guide in one file', () => {
  it('lets in its own style and script by their hashes, and nothing else', async () => {
    const folder = await outputFolder();
    await buildSite(inspection(), files(), folder);
    const latin = (await filesBelow(folder)).get('guides/lamp-cradle/lamp-cradle.html') ?? '';
    const html = Buffer.from(latin, 'latin1').toString();
    const policy = /Content-Security-Policy content="([^"]*)"/.exec(html)?.[1] ?? '';
    const hash = (text: string) => `sha256-${createHash('sha256').update(text).digest('base64')}`;
    const [, style = ''] = /<style>(.*?)<\/style>/s.exec(html) ?? [];
    const [, script = ''] = /<script>(.*?)<\/script>/s.exec(html) ?? [];
    const [, folded = ''] = /folded="([^"]*)"/.exec(script) ?? [];
    // Unfolded by Node's zlib, as a browser does by its own.
    const [text = '', ...later] = inflateSync(Buffer.from(folded, 'base64')).toString().split('\0');
    expect(text).toContain('bay_data');
    expect(later.join('')).toContain('.bay-tick');
    expect(style).not.toContain('.bay-tick');
    const parts = style.split('/**/');
    expect(parts).toHaveLength(later.length + 1);
    const whole = parts.map((part, index) => part + (later[index] ?? '')).join('');
    const plain = policy.replaceAll('&#39;', "'");
    expect(plain).toBe(
      `default-src 'none'; img-src data:; style-src '${hash(style)}' '${hash(whole)}'; script-src '${hash(script)}' '${hash(text)}'; base-uri 'none'; form-action 'none'`,
    );
    // What a guide weighs, so that no page and no style grows unseen: whoever adds to it raises the bound.
    const page = (await filesBelow(folder)).get('guides/lamp-cradle/index.html') ?? '';
    expect(page.length).toBeGreaterThan(30_000);
    expect(page.length).toBeLessThan(46_000);
    expect(latin.length).toBeLessThan(113_000);
    expect(html).not.toMatch(/<link\b|\ssrc="?(?!"?data:)|\ssrcset=|\sstyle=/);
  });

  it('leads to its page on the site, where the sheets and their print check are', async () => {
    const folder = await outputFolder();
    const one = inspection();
    const settings = { ...one.shop.settings, address: 'https://guides.example/shop/' };
    await buildSite({ ...one, shop: { ...one.shop, settings } }, files(), folder);
    const html = (await filesBelow(folder)).get('guides/lamp-cradle/lamp-cradle.html') ?? '';
    expect(html).toContain(
      '<a href=https://guides.example/shop/guides/lamp-cradle/index.html>the site that it comes from</a>',
    );
  });

  it('is told of in a line where it is over its budget', () => {
    expect(overBudgetWords('guides/a/a.html', SINGLE_FILE_BUDGET)).toBeNull();
    expect(overBudgetWords('guides/a/a.html', 7_300_000)).toBe(
      'guides/a/a.html is 7.3 MB, over the 5.0 MB for a guide in one file; fewer or smaller pictures make it lighter',
    );
    expect([weightWords(820), weightWords(99_999), weightWords(206_116)]).toEqual([
      '1 kB',
      '100 kB',
      '0.2 MB',
    ]);
  });
});
