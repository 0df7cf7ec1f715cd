import MiniSearch, { type Query, type SearchResult } from 'minisearch';
import type { SearchData, SearchEntry, SearchFact } from '../../../src/site/search/search-data.ts';
import { indexTerms, queryTerms } from '../../../src/units/search-terms.ts';

/** What a technician asks for; `null` narrows nothing. */
export interface Wish {
  readonly text: string;
  readonly kind: string | null;
  readonly platform: string | null;
}

/** A page that was found, with the lines of it that the words stand in. */
export interface Hit {
  readonly page: SearchEntry;
  readonly facts: readonly SearchFact[];
}

/** What was found, best first. */
export interface Found {
  /** The first of the pages, as many as are shown: who needs more adds a word. */
  readonly hits: readonly Hit[];
  /** How many pages there are in all. */
  readonly count: number;
  /** False where no page has all the words, so that these have only some. */
  readonly all: boolean;
}

/** Pages that are shown at most. To find the lines of thousands takes seconds, at each letter that is typed. */
const MOST = 30;

/** Lines that a result shows at most. */
const FACTS = 2;

/** Readies the search; the answer to a wish depends on nothing else. */
export function searchEngine(data: SearchData): (wish: Wish) => Found {
  const index = MiniSearch.loadJS(data.index, {
    fields: Object.keys(data.fields),
    tokenize: (text) => [text],
    processTerm: (term) => term,
  });
  return ({ text, kind, platform }) => {
    const terms = queryTerms(text);
    const isWanted = (page: SearchEntry) => passes(page, kind, platform);
    if (terms.length === 0) {
      const wanted = data.pages.filter(isWanted);
      const hits = wanted.slice(0, MOST).map((page) => ({ page, facts: [] }));
      return { hits, count: wanted.length, all: true };
    }
    const run = (query: Query, errors: (term: string) => number) =>
      index
        .search(query, { boost: data.fields, fuzzy: errors, prefix: isWord })
        .map(({ id, match }) => ({ page: data.pages[id], match }))
        .filter((result): result is Result => result.page !== undefined && isWanted(result.page));
    const all = [() => run(allOf(terms), fewErrors), () => run(allOf(terms), moreErrors)];
    for (const attempt of all) {
      const results = attempt();
      if (results.length > 0) return foundOf(results, true);
    }
    return foundOf(run({ combineWith: 'OR', queries: [...terms] }, fewErrors), false);
  };
}

/** A page with the words of it that were met, each with the fields that it stands in. */
interface Result extends Pick<SearchResult, 'match'> {
  readonly page: SearchEntry;
}

function foundOf(results: readonly Result[], all: boolean): Found {
  return { hits: results.slice(0, MOST).map(hitOf), count: results.length, all };
}

/** A size is right or it is another size; only a word may be misspelt or still be typed. */
function isWord(term: string): boolean {
  return !/^\d/.test(term);
}

/** Letters that may be wrong in a word, so that "bumper" does not find "tamper". */
function fewErrors(term: string): number {
  if (/\d/.test(term) || term.length < 4) return 0;
  return term.length < 8 ? 1 : 2;
}

/** The same where nothing else was found: two letters that changed places count as two errors. */
function moreErrors(term: string): number {
  return /\d/.test(term) || term.length < 4 ? 0 : 2;
}

/** All terms, as they were typed or with two neighbours as one word: "jig saw" finds the jigsaw. */
function allOf(terms: readonly string[]): Query {
  const joined = terms
    .slice(1)
    .map((term, index) => [...terms.slice(0, index), `${terms[index]}${term}`, ...terms.slice(index + 2)]);
  return {
    combineWith: 'OR',
    queries: [[...terms], ...joined].map((queries) => ({ combineWith: 'AND', queries })),
  };
}

function passes(page: SearchEntry, kind: string | null, platform: string | null): boolean {
  if (kind !== null && page.kind !== kind) return false;
  return platform === null || page.platforms === null || page.platforms.includes(platform);
}

function hitOf({ page, match }: Result): Hit {
  const words = Object.keys(match).filter((word) => match[word]?.includes('facts'));
  const told = page.facts
    .map((fact) => ({ fact, count: indexTerms(fact.text).filter((term) => words.includes(term)).length }))
    .filter(({ count }) => count > 0)
    .sort((a, b) => b.count - a.count);
  return { page, facts: told.slice(0, FACTS).map(({ fact }) => fact) };
}
