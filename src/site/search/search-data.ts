import type { AsPlainObject } from 'minisearch';

/** A page that can be found, with the words that it is found by. */
export interface SearchEntry {
  readonly kind: 'guide' | 'tool' | 'fastener' | 'platform' | 'term';
  /** What the page is, in a word or two: "Guide", "Signal word". */
  readonly label: string;
  readonly title: string;
  /** From the site's root. */
  readonly href: string;
  /** What stands beside the title in a list: the vehicle and part number of a guide. */
  readonly note: string;
  /** What else it is called, part numbers included. */
  readonly names: readonly string[];
  /** What the page says, in short lines, each with its place on the page where it has one. */
  readonly facts: readonly SearchFact[];
  /** Ids of the platforms whose guides it is for; `null` for what is for all. */
  readonly platforms: readonly string[] | null;
}

/** A line of a page, as a result shows it. */
export interface SearchFact {
  readonly text: string;
  /** The anchor of the step that it belongs to. */
  readonly at: string | null;
}

/** What the search of the first page works on. */
export interface SearchData {
  readonly pages: readonly SearchEntry[];
  readonly fields: Readonly<Record<string, number>>;
  /** MiniSearch's own form; documents are numbered as in `pages`. */
  readonly index: AsPlainObject;
}

/** The text of the search data in parts, by the names of their scripts and in their order; empty what is not loaded. */
export type SearchTexts = Readonly<Record<string, string>>;
