import MiniSearch from 'minisearch';
import { indexTerms } from '../units/search-terms.ts';
import type { SearchData, SearchEntry } from './search-data.ts';

/** The fields of a page that are searched, with how much a word found in each counts. */
const fields = { title: 4, names: 3, note: 2, facts: 1 } as const;

/** Indexes every page; the same pages give the same bytes. */
export function searchData(pages: readonly SearchEntry[]): SearchData {
  const index = new MiniSearch({
    fields: Object.keys(fields),
    tokenize: (text) => [...indexTerms(text)],
    processTerm: (term) => term,
  });
  index.addAll(
    pages.map(({ title, names, note, facts }, id) => ({
      id,
      title,
      names: names.join('\n'),
      note,
      facts: facts.map(({ text }) => text).join('\n'),
    })),
  );
  return { pages, fields, index: index.toJSON() };
}

/** The index as a classic script that sets one global: from `file://` a page can read nothing else. */
export function searchIndexScript(data: SearchData): string {
  return `globalThis.searchData=${JSON.stringify(data)};\n`;
}
