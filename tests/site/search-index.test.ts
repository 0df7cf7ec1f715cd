import { describe, expect, it } from 'vitest';
import { deadLinks, pageLinks } from '../../src/site/guides/link-check.ts';
import { searchEntries } from '../../src/site/search/search-entries.ts';
import { searchData, searchScripts } from '../../src/site/search/search-index.ts';
import { searchEngine } from '../../templates/scripts/search/search-engine.ts';
import { buildSite, publicationFor } from './build.ts';
import { loadedSearch } from './loaded-search.ts';
import { referenceInspection } from './reference-shop.ts';
import { files, filesBelow, outputFolder } from './workspace.ts';

const entries = searchEntries(publicationFor(referenceInspection()));
const search = searchEngine(searchData(entries));
const find = (text: string, kind: string | null = null, platform: string | null = null) =>
  search({ text, kind, platform });
const titles = (text: string) => find(text).hits.map(({ page }) => page.title);

describe('the index', () => {
  it('is a classic script that sets one global, the same bytes each time', async () => {
    const scripts = searchScripts(searchData(entries));
    expect(scripts).toEqual(searchScripts(searchData(entries)));
    expect(scripts.map(({ name }) => name)).toEqual(['search-index']);
    expect(await loadedSearch(scripts)).toEqual(JSON.parse(JSON.stringify(searchData(entries))));
  });

  it('comes in parts that pass no limit and join to the same, wherever they are cut', async () => {
    const awkward = {
      ...searchData(entries.slice(0, 1)),
      fields: { ['it\'s \\ "½" 𝄞\u2028\n'.repeat(40)]: 1 },
    };
    for (let limit = 900; limit < 910; limit += 1) {
      const [head, ...parts] = searchScripts(awkward, limit);
      expect(parts.length).toBeGreaterThan(10);
      expect(head?.name).toBe('search-index');
      for (const { text } of parts) expect(Buffer.byteLength(text)).toBeLessThanOrEqual(limit);
      expect(await loadedSearch(searchScripts(awkward, limit))).toEqual(JSON.parse(JSON.stringify(awkward)));
    }
  });

  it('gives a part with another text another name, so that two builds are never joined', () => {
    const [first, ...rest] = entries;
    if (!first) throw new Error('the shop has pages');
    const names = (title: string) =>
      searchScripts(searchData([{ ...first, title }, ...rest]), 9_000).map(({ name }) => name);
    const [one, other] = [names('Cradle'), names('Ladder')];
    expect(other.length).toBe(one.length);
    expect(other[1]).not.toBe(one[1]);
    expect(new Set(one).size).toBe(one.length);
  });

  it('leads to pages and places that are there', async () => {
    const folder = await outputFolder();
    expect(await buildSite(referenceInspection(), files(), folder)).toMatchObject({ ok: true });
    const site = await filesBelow(folder);
    const pages = [...site].filter(([path]) => path.endsWith('.html'));
    const links = pages.map(([path, html]) => pageLinks(path, html));
    const targets = entries.flatMap(({ href, facts }) => [
      href,
      ...facts.flatMap(({ at }) => (at === null ? [] : `${href}#${at}`)),
    ]);
    const html = targets.map((href) => `<a href="${href}">x</a>`).join('');
    expect(deadLinks([...links, pageLinks('results.html', html)], new Set(site.keys()))).toEqual([]);
    expect(targets.length).toBeGreaterThan(50);
  });
});

describe('the search', () => {
  it('shows the lines that the words stand in, with the step that tightens', () => {
    const [hit] = find('25 Nm').hits;
    expect(hit?.page.title).toBe('Auxiliary lamp cradle, behind the front bumper cover');
    expect(hit?.facts).toEqual([
      { text: expect.stringMatching(/^M8 flange nut, M8x1\.25, .*25\u00a0N·m/), at: 'hang' },
    ]);
  });

  it('forgives a wrong letter in a word and none in a size', () => {
    expect(titles('leever')).toContain('Trim lever');
    expect(titles('t26')).not.toContain('T25 bit');
    expect(find('23 mm socket').all).toBe(false);
  });

  it('says when no page has all the words, and shows those that have some', () => {
    const { hits, all } = find('trim lever xyzzy');
    expect(all).toBe(false);
    expect(hits[0]?.page.title).toBe('Trim lever');
    expect(find('xyzzy')).toEqual({ hits: [], count: 0, all: false });
  });

  it('is narrowed to a kind and to a vehicle; what is for every vehicle stays', () => {
    expect(find('hexagon', 'term').hits.map(({ page }) => page.kind)).not.toContain('tool');
    expect(find('socket', null, 'sorrel-wicket').hits.map(({ page }) => page.title)).not.toContain(
      '13 mm socket',
    );
    expect(find('hexagon', null, 'sorrel-wicket').hits.map(({ page }) => page.kind)).toContain('term');
  });

  it('lists all of a kind where nothing is typed', () => {
    expect(find('', 'fastener').hits.map(({ page }) => page.title)).toEqual([
      'Hexagon-head screw',
      'Panel screw',
    ]);
  });

  it('gives the first 30 pages and counts the rest, with words and without', () => {
    const [first] = entries;
    if (!first) throw new Error('the shop has pages');
    const many = Array.from({ length: 40 }, (_, index) => ({ ...first, title: `Cradle ${index + 1}` }));
    const searchMany = searchEngine(searchData(many));
    for (const [text, kind] of [['cradle', null] as const, ['', first.kind] as const]) {
      const { hits, count } = searchMany({ text, kind, platform: null });
      expect([hits.length, count]).toEqual([30, 40]);
    }
  });
});
