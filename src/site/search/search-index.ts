import MiniSearch from 'minisearch';
import { contentHash } from '../../store/content-hash.ts';
import { indexTerms } from '../../units/search-terms.ts';
import type { SearchData, SearchEntry } from './search-data.ts';

/** The fields of a page that are searched, with how much a word found in each counts. */
const fields = { title: 4, names: 3, note: 2, facts: 1 } as const;

/** Bytes that no script of the search passes, so that the first page opens at once whatever the search has grown to. */
const SEARCH_LIMIT = 2_000_000;

/** A classic script of the search: from `file://` a page can read nothing else. */
interface SearchScript {
  /** Without folder and ending. */
  readonly name: string;
  readonly text: string;
}

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

/**
 * The scripts that bring the search into a page. The first is the page's own and sets `searchData`; where that would
 * pass the limit it sets `searchTexts` instead, the names of the parts, and each part puts its text in its place.
 * Joined they are the one text again, so that no answer depends on where it was cut.
 */
export function searchScripts(data: SearchData, limit = SEARCH_LIMIT): readonly SearchScript[] {
  const text = JSON.stringify(data);
  const whole = `globalThis.searchData=${text};\n`;
  const name = 'search-index';
  if (Buffer.byteLength(whole) <= limit) return [{ name, text: whole }];
  // A third leaves room for the names, and for a text of nothing but signs to escape, which becomes twice as long.
  const parts = cut(Buffer.from(text), Math.floor(limit / 3)).map((part, index) => {
    // A page that is still open while its site is replaced must not join two builds: another text has another name.
    const own = `${name}-${index + 1}-${contentHash(part)}`;
    return { name: own, text: `globalThis.searchTexts['${own}']='${part.replace(/[\\']/g, '\\$&')}';\n` };
  });
  const places = Object.fromEntries(parts.map((part) => [part.name, '']));
  return [{ name, text: `globalThis.searchTexts=${JSON.stringify(places)};\n` }, ...parts];
}

/** Texts of at most so many bytes, between whole characters. */
function cut(bytes: Buffer, size: number): readonly string[] {
  const texts: string[] = [];
  for (let start = 0; start < bytes.length; ) {
    let end = Math.min(start + size, bytes.length);
    // All bytes of a character in UTF-8 but its first are 10xxxxxx.
    while (((bytes[end] ?? 0) & 0b1100_0000) === 0b1000_0000) end -= 1;
    texts.push(bytes.toString('utf8', start, end));
    start = end;
  }
  return texts;
}
