import MiniSearch, { type Query, type SearchResult } from 'minisearch';
import type { SearchData, SearchEntry, SearchFact } from '../../src/site/search-data.ts';
import { indexTerms, queryTerms } from '../../src/units/search-terms.ts';

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
  readonly hits: readonly Hit[];
  /** False where no page has all the words, so that these have only some. */
  readonly all: boolean;
}

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
    const run = (query: Query) =>
      index.search(query, {
        boost: data.fields,
        fuzzy: misspelling,
        prefix: (term) => !/^\d/.test(term),
        filter: ({ id }) => passes(data.pages[id], kind, platform),
      });
    const strict = run(allOf(terms));
    const results = strict.length > 0 ? strict : run({ combineWith: 'OR', queries: [...terms] });
    return { hits: results.flatMap((result) => hitOf(result, data.pages)), all: strict.length > 0 };
  };
}

/** A size is right or it is another size; a word may have a letter wrong in four, at most two. */
function misspelling(term: string): number | false {
  if (/\d/.test(term) || term.length < 4) return false;
  return term.length < 6 ? 1 : 2;
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

function passes(page: SearchEntry | undefined, kind: string | null, platform: string | null): boolean {
  if (!page || (kind !== null && page.kind !== kind)) return false;
  return platform === null || page.platforms.length === 0 || page.platforms.includes(platform);
}

function hitOf({ id, match }: SearchResult, pages: readonly SearchEntry[]): readonly Hit[] {
  const page = pages[id];
  if (!page) return [];
  const words = Object.keys(match).filter((word) => match[word]?.includes('facts'));
  const told = page.facts
    .map((fact) => ({ fact, count: indexTerms(fact.text).filter((term) => words.includes(term)).length }))
    .filter(({ count }) => count > 0)
    .sort((a, b) => b.count - a.count);
  return [{ page, facts: told.slice(0, FACTS).map(({ fact }) => fact) }];
}
