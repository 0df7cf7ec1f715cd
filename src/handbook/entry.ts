import type { RuleExample } from '../diagnostics/rule-card.ts';

/** An attribute or a key, as the handbook tells of it. */
export interface EntryRow {
  /** As it is written: `holds`, `#id`, `words: vehicle`. */
  readonly name: string;
  /** What is written there. */
  readonly expects: string;
  /** What it says of the thing. */
  readonly means: string;
  /** Without it, the thing means nothing. */
  readonly needed: boolean;
}

/** A word of the format or a file of a workspace, explained. Words in backticks are what an author types. */
export interface HandbookEntry {
  /** What is looked up: `fastener`, `shop.yaml`. */
  readonly name: string;
  /** Its place on the page: `leaf-fastener`, `shop-yaml`. */
  readonly id: string;
  /** "::fastener, on a line of its own". */
  readonly title: string;
  readonly lead: string;
  readonly rows: readonly EntryRow[];
  readonly example: RuleExample;
}

/** What a list says of something: its first sentence, without the full stop. */
export function firstSentence(text: string): string {
  return text.split(/(?<=\.)\s/)[0]?.replace(/\.$/, '') ?? text;
}

/** The lines of an example as they are shown: what is too long on purpose need not be read to its end. */
export function excerptLines(text: string): readonly string[] {
  // Some examples are too long by thousands of lines: no more are taken apart than are shown.
  const lines = text
    .trimEnd()
    .split('\n', 41)
    .map((line) => (line.length > 160 ? `${line.slice(0, 160)}…` : line));
  return lines.length > 40 ? [...lines.slice(0, 40), '…'] : lines;
}
