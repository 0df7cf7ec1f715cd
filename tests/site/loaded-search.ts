import type { SearchData } from '../../src/site/search/search-data.ts';
import type { searchScripts } from '../../src/site/search/search-index.ts';
import { joinedSearch } from '../../templates/scripts/search/search-parts.ts';

/** What a page has once it has run the scripts of the search, in parts or not; they may set nothing else. */
export async function loadedSearch(scripts: ReturnType<typeof searchScripts>): Promise<SearchData> {
  const scope: { searchData?: SearchData; searchTexts?: Record<string, string> } = {};
  for (const { text } of scripts) new Function('globalThis', text)(scope);
  const { searchData, searchTexts, ...rest } = scope;
  if (Object.keys(rest).length > 0) throw new Error(`other globals are set: ${Object.keys(rest)}`);
  const parts = scripts.slice(1).map(({ name }) => name);
  if (`${Object.keys(searchTexts ?? {})}` !== `${parts}`)
    throw new Error('the parts named are not the parts made');
  const data = searchData ?? (searchTexts && (await joinedSearch(searchTexts)));
  if (!data || (searchData && searchTexts)) throw new Error('the search is set in one form, and only one');
  return data;
}
