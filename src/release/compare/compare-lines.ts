import type { Fact, RecordLine } from '../record.ts';
import {
  isMessage,
  meaningOf,
  meaningOfLines,
  meansNothing,
  onlyNames,
  sameMeaning,
  type Touch,
  touchOfMeaning,
} from './meaning.ts';
import { type Pairing, pair, pairing } from './pairs.ts';

/** A paragraph, a message or a feature of a template, with its places in its list, from 0. */
export interface ChangedLine {
  readonly before: RecordLine | null;
  readonly after: RecordLine | null;
  readonly from: number | null;
  readonly to: number | null;
  readonly moved: boolean;
}

/** What is different between the lines of one thing, then and now, each with what that bears on. */
export function lineChanges(
  old: readonly RecordLine[],
  now: readonly RecordLine[],
): readonly (ChangedLine & { readonly touches: Touch })[] {
  const found = pairedLines(old, now);
  const prose = (lines: readonly RecordLine[]) =>
    meaningOfLines(lines.filter(({ kind }) => kind === 'prose'));
  const sameProse = sameMeaning(prose(old), prose(now));
  const told = (before: RecordLine | null, after: RecordLine | null): Touch => {
    const kind = (after ?? before)?.kind;
    return kind === 'prose' && sameProse ? 'words' : touchOfLine(before, after);
  };
  return [
    ...found.gone.flatMap((from) => {
      const before = old[from] ?? null;
      return { before, after: null, from, to: null, moved: false, touches: told(before, null) };
    }),
    ...found.pairs.flatMap(({ from, to, moved }) => {
      const [before, after] = [old[from] ?? null, now[to] ?? null];
      if (!moved && before && after && lineKey(before) === lineKey(after)) return [];
      const touches = told(before, after);
      const order = moved && touches === 'words' && !(after?.kind === 'prose' && sameProse);
      return { before, after, from, to, moved, touches: order && after ? touchOfMove(after) : touches };
    }),
    ...found.added.flatMap((to) => {
      const after = now[to] ?? null;
      return { before: null, after, from: null, to, moved: false, touches: told(null, after) };
    }),
  ];
}

/** A message that has changed places guards something else; a picture does not. */
function touchOfMove(line: RecordLine): Touch {
  if (isMessage(line)) return 'safety';
  return line.kind === 'prose' && !meansNothing(meaningOfLines([line])) ? 'work' : 'words';
}

/** What a changed line bears on: every word of a safety message counts, and no word of a picture or a reason. */
function touchOfLine(before: RecordLine | null, after: RecordLine | null): Touch {
  const line = after ?? before;
  if (!line || line.kind === 'figure' || line.kind === 'why') return 'words';
  const lines = [before, after].map((one) => meaningOfLines(one ? [one] : []));
  const [one, other] = [lines[0], lines[1]];
  if (isMessage(line) || (before && isMessage(before))) {
    const same = before && after && before.kind === after.kind && before.words === after.words;
    return same && one && other && sameMeaning(one, other) ? 'words' : 'safety';
  }
  if (!one || !other) return 'words';
  const whole = line.kind === 'photo' || line.kind === 'prove' || line.kind === 'template';
  if (whole && (!before || !after)) return 'work';
  return before && after && before.kind !== after.kind ? 'work' : touchOfMeaning(one, other);
}

function lineKey({ kind, id, words, acts, facts }: RecordLine): string {
  const meant = (some: readonly Fact[]) => some.map((one) => `${one.name} ${meaningOf(one)}`);
  return JSON.stringify([
    kind,
    id,
    words,
    acts.map(({ verb, target, facts: own }) => [verb, target, meant(own)]),
    meant(facts),
  ]);
}

/** How alike the words of two paragraphs must be for one to have become the other (tried on the demo guides). */
const ALIKE = 0.4;

/** Pairs lines that are equal, then those that do the same or are called the same, then the most alike. */
function pairedLines(old: readonly RecordLine[], now: readonly RecordLine[]): Pairing {
  const sure = pair(old, now, [
    lineKey,
    ({ kind, id }) => (id === undefined ? null : `${kind} ${id}`),
    ({ kind, words }) => `${kind} ${words}`,
    (line) => (line.acts.some((act) => !onlyNames(act)) ? doneIn(line) : null),
    ({ kind, acts, facts }) =>
      acts.length === 0 && facts.length > 0 ? JSON.stringify([kind, facts.map(meaningOf)]) : null,
  ]);
  const found = new Map(sure.pairs.map(({ from, to }) => [from, to]));
  const likely = sure.gone.flatMap((from) =>
    sure.added.map((to) => ({ from, to, alike: likeness(old[from], now[to]) })),
  );
  likely.sort((a, b) => b.alike - a.alike || a.from - b.from || a.to - b.to);
  const taken = new Set<number>();
  for (const { from, to, alike } of likely) {
    if (alike < ALIKE || found.has(from) || taken.has(to)) continue;
    found.set(from, to);
    taken.add(to);
  }
  return pairing(found, old.length, now.length);
}

function doneIn({ kind, acts }: RecordLine): string {
  return JSON.stringify([
    kind,
    acts.filter((act) => !onlyNames(act)).map(({ verb, target }) => [verb, target]),
  ]);
}

/** The share of words that two lines of one nature have in common, 0 to 1 (Dice's coefficient). */
function likeness(one: RecordLine | undefined, other: RecordLine | undefined): number {
  if (!one || !other) return 0;
  const messages = isMessage(one) && isMessage(other);
  if (one.kind !== other.kind && !messages) return 0;
  const [some, others] = [one, other].map(({ text }) => text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? []);
  if (!some || !others || some.length + others.length === 0) return one.kind === other.kind ? 1 : 0;
  const left = [...others];
  const shared = some.filter((word) => {
    const place = left.indexOf(word);
    if (place >= 0) left.splice(place, 1);
    return place >= 0;
  });
  return (2 * shared.length) / (some.length + others.length);
}
