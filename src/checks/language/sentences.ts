import { actionWords, findTarget, mentionWords, oncePer, targetNoun } from '../../job/index.ts';
import type { Guide } from '../../model/guide.ts';
import type { Action, Mention } from '../../model/inline.ts';
import type { Side } from '../../model/item.ts';
import type { Inline, Prose, ProseElement } from '../../model/prose.ts';
import type { Span } from '../../source/span.ts';
import { units } from '../../units/table.ts';

/** A word as printed, without the marks around it. */
export interface Word {
  /** In lower case. */
  readonly text: string;
  /** The mark that follows it: a comma, a semicolon, a colon, a dash; empty where none does. */
  readonly mark: string;
  /** Whether an action's words begin here, which makes it an instruction whatever the word. */
  readonly acts: boolean;
}

/** A sentence as it is printed, and where the author wrote it. */
export interface Sentence {
  readonly words: readonly Word[];
  readonly at: Span;
}

/** Words that were written together. */
interface Piece {
  readonly text: string;
  readonly at: Span | null;
  readonly acts: boolean;
}

/** Elements that hold a run of sentences; tables and code do not. */
const runs = new Set(['p', 'li', 'dd', 'blockquote']);
const unread = new Set(['table', 'pre', 'code', 'img']);

/** The sentences of some prose, with what `:where` holds in its place. */
export function sentencesOf(prose: Prose, guide: Guide, stepSide: Side | null): readonly Sentence[] {
  return readersOf(guide)[stepSide ?? 'none'](prose);
}

/** Every rule about language reads the same sentences, so they are taken apart once. */
const readersOf = oncePer((guide: Guide) => {
  const reader = (side: Side | null) =>
    oncePer((prose: Prose) => runsOf(prose).flatMap((run) => split(piecesOf(run, guide, side))));
  return { none: reader(null), left: reader('left'), right: reader('right'), each: reader('each') };
});

function runsOf(prose: Prose): readonly Prose[] {
  const loose: Prose[number][] = [];
  const inner: Prose[] = [];
  for (const node of prose) {
    if (node.type !== 'element' || isInline(node)) loose.push(node);
    else if (!unread.has(node.tagName)) inner.push(...runsOf(node.children));
  }
  return loose.length > 0 ? [loose, ...inner] : inner;
}

function isInline({ tagName }: ProseElement<Inline>): boolean {
  return !runs.has(tagName) && !/^(?:ul|ol|dl|dt|table|pre|h[1-6]|hr)$/.test(tagName);
}

function piecesOf(prose: Prose, guide: Guide, stepSide: Side | null): readonly Piece[] {
  return prose.flatMap((node) => piecesIn(node, guide, stepSide));
}

function piecesIn(node: Prose[number], guide: Guide, stepSide: Side | null): readonly Piece[] {
  switch (node.type) {
    case 'text':
      return [{ text: node.value, at: node.at, acts: false }];
    case 'element':
      return unread.has(node.tagName) ? [] : piecesOf(node.children, guide, stepSide);
    case 'where':
      return piecesOf(node.children, guide, stepSide);
    case 'mention':
      return [{ text: mentioned(node, guide), at: node.at, acts: false }];
    case 'action':
      return [{ text: acted(node, guide, stepSide), at: node.at, acts: true }];
  }
}

function mentioned(mention: Mention, guide: Guide): string {
  const target = findTarget(guide, mention.target.value);
  return target ? mentionWords(mention, targetNoun(target), false) : mention.target.value;
}

function acted(action: Action, guide: Guide, stepSide: Side | null): string {
  const target = findTarget(guide, action.target.value);
  return target ? actionWords(action, target, { stepSide, starts: false, words: guide.words }) : action.verb;
}

/** A number and its unit are read as one word. */
const unitNames: ReadonlySet<string> = new Set(units.map(({ name }) => name));

/** Short forms whose full stop ends no sentence. */
const shortForms = /(?:^|[\s(])(?:e\.g|i\.e|etc|approx|no|nos|fig|min|max|vs)\.$/i;

function split(pieces: readonly Piece[]): readonly Sentence[] {
  const sentences: Sentence[] = [];
  let words: Word[] = [];
  let at: Span | null = null;
  const close = (): void => {
    if (words.length > 0 && at) sentences.push({ words, at });
    words = [];
    at = null;
  };
  for (const piece of pieces) {
    let begins = piece.acts;
    for (const { text, from, to } of chunks(piece.text)) {
      const bare = text.replace(/^[^\p{L}\p{N}]+|[^\p{L}\p{N}°%]+$/gu, '');
      if (unitNames.has(bare) && /^[\d.,/–-]+$/.test(words.at(-1)?.text ?? '')) markLast(words, text);
      else if (bare !== '') {
        words.push({ text: bare.toLowerCase().replaceAll('’', "'"), mark: markOf(text), acts: begins });
        begins = false;
      } else if (words.length > 0) markLast(words, text);
      at = joined(at, within(piece, from, to));
      if (/[.!?]["”’)\]]*$/.test(text) && !shortForms.test(text)) close();
    }
  }
  close();
  return sentences;
}

/** What stands between spaces; a no-break space keeps a quantity one word, and brackets are left out. */
function chunks(
  text: string,
): readonly { readonly text: string; readonly from: number; readonly to: number }[] {
  return [...text.matchAll(/\([^()]*\)[^\s\p{L}\p{N}]*|[^ \t\r\n]+/gu)].flatMap((match) => {
    const [whole] = match;
    const bare = whole.startsWith('(') ? whole.replace(/^\([^()]*\)/, '') : whole;
    return bare === '' ? [] : [{ text: bare, from: match.index, to: match.index + whole.length }];
  });
}

function markOf(text: string): string {
  return /[,;:–—]["”’)\]]*$/.exec(text)?.[0].charAt(0) ?? '';
}

/** A mark that follows an action or a mention stands in a piece of its own. */
function markLast(words: Word[], text: string): void {
  const last = words.at(-1);
  const mark = markOf(text);
  if (last && mark !== '') words[words.length - 1] = { ...last, mark };
}

/** The place of a part of a piece; of the whole piece where its text is not as long as it was written. */
function within({ text, at, acts }: Piece, from: number, to: number): Span | null {
  if (!at || acts || at.end - at.start !== text.length) return at;
  return { file: at.file, start: at.start + from, end: at.start + to };
}

function joined(a: Span | null, b: Span | null): Span | null {
  if (!a || !b || a.file !== b.file) return a ?? b;
  return { file: a.file, start: Math.min(a.start, b.start), end: Math.max(a.end, b.end) };
}
