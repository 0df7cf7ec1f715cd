import type { RuleCard } from '../diagnostics/rule-card.ts';
import { nearest } from '../diagnostics/suggest.ts';
import { ruleCards } from '../shop/index.ts';
import type { Chapter } from './chapters.ts';
import { directiveEntries, directiveWords } from './directive-entries.ts';
import type { EntryRow, HandbookEntry } from './entry.ts';
import { fileEntries } from './file-entries.ts';

/** An attribute or key that several things have, with each meaning once. */
interface SharedRow extends EntryRow {
  /** Titles of what has it with this meaning. */
  readonly on: readonly string[];
}

/** What a word leads to. */
export type HandbookPage =
  | { readonly kind: 'entries'; readonly entries: readonly HandbookEntry[] }
  | { readonly kind: 'rule'; readonly card: RuleCard }
  | { readonly kind: 'chapter'; readonly chapter: Chapter }
  | { readonly kind: 'rows'; readonly name: string; readonly rows: readonly SharedRow[] };

const allEntries = [...directiveEntries, ...fileEntries];

/** The page of a word as it is typed (`::fastener`, `shop.yaml`, `need-unmet`, `drawing`, `free-when`); `null` without one. */
export function pageOf(typed: string, chapters: readonly Chapter[]): HandbookPage | null {
  const word = typed
    .trim()
    .replace(/^:+/, '')
    .replace(/^#(?=id$)/, '')
    .toLowerCase();
  const chapter = chapters.find(({ name }) => name === word);
  const entries = allEntries.filter(({ name }) => name === word);
  if (entries.length > 0) return { kind: 'entries', entries };
  const card = ruleCards.find(({ code }) => code === word);
  if (card) return { kind: 'rule', card };
  if (chapter) return { kind: 'chapter', chapter };
  const rows = rowsNamed(word);
  return rows.length > 0 ? { kind: 'rows', name: word, rows } : null;
}

/** Attributes and keys of a name, equal meanings told once. */
function rowsNamed(word: string): readonly SharedRow[] {
  const shared = new Map<string, SharedRow>();
  for (const { title, rows } of allEntries) {
    for (const row of rows) {
      if (keyOf(row) !== word) continue;
      const known = shared.get(row.means);
      shared.set(row.means, { ...row, on: [...(known?.on ?? []), title] });
    }
  }
  return [...shared.values()];
}

/** The last key of `words: vehicle`; the attribute `#id` is looked up as `id`. */
function keyOf({ name }: EntryRow): string {
  return name.replace(/^.*: /, '').replace(/^#/, '');
}

/** The word that was likely meant: that of the first page that speaks of it; else the nearest name. */
export function nearestWord(typed: string, chapters: readonly Chapter[]): string | null {
  const word = typed.trim().replace(/^:+/, '').toLowerCase();
  const rows = allEntries.flatMap((entry) => entry.rows);
  const says = (text: string) =>
    ` ${text.toLowerCase().replace(/[^\p{L}\p{N}-]+/gu, ' ')} `.includes(` ${word} `);
  const spoken =
    chapters.find(({ title }) => says(title))?.name ??
    allEntries.find(({ title, lead }) => says(title) || says(lead))?.name ??
    rows
      .map((row) => (says(row.expects) || says(row.means) ? keyOf(row) : null))
      .find((key) => key !== null) ??
    ruleCards.find(({ title, why }) => says(title) || says(why))?.code ??
    chapters.find(({ text }) => says(text))?.name;
  const names = [
    ...directiveWords,
    ...fileEntries.map(({ name }) => name),
    ...chapters.map(({ name }) => name),
    ...ruleCards.map(({ code }) => code),
    ...rows.map(keyOf),
  ];
  return spoken ?? nearest(word, names)[0] ?? null;
}
