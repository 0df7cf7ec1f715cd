import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { diskFiles, inspect } from '../../src/shop/index.ts';
import { searchEntries } from '../../src/site/search/search-entries.ts';
import { searchData, searchScripts } from '../../src/site/search/search-index.ts';
import { searchEngine } from '../../templates/scripts/search/search-engine.ts';
import { pictureStore } from '../picture-store.ts';
import { publicationFor } from './build.ts';
import { loadedSearch } from './loaded-search.ts';
import { queries } from './search-queries.ts';

const shop = await inspect(diskFiles(resolve(import.meta.dirname, '../../guides')), await pictureStore());
const data = searchData(searchEntries(publicationFor(shop)));
const search = searchEngine(data);

/** The first three pages for what was typed. */
function firstThree(typed: string): readonly string[] {
  const { hits } = search({ text: typed, kind: null, platform: null });
  return hits.slice(0, 3).map(({ page }) => page.href);
}

describe('the search of the demo shop', () => {
  for (const [kind, list] of Object.entries(queries)) {
    it.each(list)(`finds ${kind}: $typed`, ({ typed, page }) => {
      expect(firstThree(typed)).toContain(page);
    });
  }

  it('is asked enough: 40 queries, ten misspelt, ten by a synonym, ten by size or torque', () => {
    expect(Object.values(queries).flat().length).toBeGreaterThanOrEqual(40);
    for (const kind of ['misspelt', 'by a synonym', 'by size or torque']) {
      expect(queries[kind]?.length, kind).toBeGreaterThanOrEqual(10);
    }
  });

  it('answers the same from parts as from one file: pages, order and lines', async () => {
    const scripts = searchScripts(data, 20_000);
    expect(scripts.length).toBeGreaterThan(5);
    const fromParts = searchEngine(await loadedSearch(scripts));
    for (const { typed } of Object.values(queries).flat()) {
      const wish = { text: typed, kind: null, platform: null };
      expect(fromParts(wish)).toEqual(search(wish));
    }
  });
});
