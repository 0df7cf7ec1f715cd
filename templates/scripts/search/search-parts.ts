import type { SearchData, SearchTexts } from '../../../src/site/search/search-data.ts';
import { loadBeside } from '../beside.ts';

/** The search data from its parts, loaded one after another; rejects where one cannot be had. */
export async function joinedSearch(texts: SearchTexts): Promise<SearchData> {
  for (const [name, text] of Object.entries(texts)) if (text === '') await loadBeside(name);
  return JSON.parse(Object.values(texts).join(''));
}
