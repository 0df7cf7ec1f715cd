import type { Finding, Suggestion } from '../diagnostics/finding.ts';
import type { SourceFile, Sources } from '../source/source-file.ts';
import { lineColumn, lineText } from '../source/source-file.ts';
import { compareSpans } from '../source/span.ts';

/** What an edit must leave alone: it is compared before and after. */
type Kept = (text: string) => string;

const lettersAndDigits: Kept = (text) => text.replace(/[^\p{L}\p{N}]/gu, '');
const words: Kept = (text) =>
  text
    .split(/[\s,]+/)
    .filter((word) => word !== '')
    .join(' ');
const address: Kept = (text) => {
  try {
    return decodeURIComponent(text.replaceAll('\\', '/'));
  } catch {
    return text;
  }
};
const fence: Kept = (text) => text.replace(/^(:{3,})[a-z-]+$/, '$1');

/**
 * The rules whose mend needs no judgement, each with what its edit must keep: quotes, fences, hyphens of front matter,
 * a wrong form, the space before braces, commas of a list, slashes and percent-escapes of an address.
 */
const sure: ReadonlyMap<string, Kept> = new Map([
  ['quotes-curly', lettersAndDigits],
  ['value-unquoted', lettersAndDigits],
  ['yaml-needs-quotes', lettersAndDigits],
  ['yaml-alias-unknown', lettersAndDigits],
  ['yaml-wrong-value', lettersAndDigits],
  ['yaml-broken', lettersAndDigits],
  ['front-matter-unread', lettersAndDigits],
  ['directive-form', lettersAndDigits],
  ['directive-half-read', lettersAndDigits],
  ['container-unclosed', fence],
  ['fence-stray', fence],
  ['attribute-value', words],
  ['picture-missing', address],
]);

/** Facts that only an author may write, however small the edit seems. */
const authorsOwn = /(?:\b(?:id|count|torque)\s*[=:]\s*["'“”]?|#[\w-]*)$/;

/** The edits that findings suggest and that change no fact, in the order of the text; none lies on another. */
export function sureMends(findings: readonly Finding[], sources: Sources): readonly Suggestion[] {
  const mends: Suggestion[] = [];
  const suggested = findings.flatMap(({ code, suggestion }) => (suggestion ? [{ code, ...suggestion }] : []));
  for (const { code, at, text } of suggested.sort((a, b) => compareSpans(a.at, b.at))) {
    const source = sources.get(at.file);
    const last = mends.at(-1);
    const apart = !last || last.at.file !== at.file || last.at.end <= at.start;
    if (source && apart && isSure(code, { at, text }, source)) mends.push({ at, text });
  }
  return mends;
}

function isSure(code: string, { at, text }: Suggestion, source: SourceFile): boolean {
  const kept = sure.get(code);
  const before = source.text.slice(at.start, at.end);
  if (!kept || before === text || kept(before) !== kept(text) || text.startsWith('#')) return false;
  const { line, column } = lineColumn(source, at.start);
  const whole = lineText(source, line);
  return !/^:{2,3}none\b/.test(whole) && !authorsOwn.test(whole.slice(0, column - 1));
}

/** A text with edits of its file made. */
export function withMends(text: string, mends: readonly Suggestion[]): string {
  let made = '';
  let from = 0;
  for (const { at, text: instead } of mends) {
    made += text.slice(from, at.start) + instead;
    from = at.end;
  }
  return made + text.slice(from);
}

/** What differs between two texts, a line of the first with "-" above its like of the second with "+". */
export function changedLines(path: string, before: string, after: string): string {
  const [old, now] = [before.split(/\r\n|\n|\r/), after.split(/\r\n|\n|\r/)];
  if (old.length === now.length) {
    return old
      .flatMap((line, index) =>
        line === now[index] ? [] : [`${path}:${index + 1}\n- ${line}\n+ ${now[index] ?? ''}\n`],
      )
      .join('');
  }
  let head = 0;
  while (head < old.length && old[head] === now[head]) head += 1;
  let tail = 0;
  while (tail < Math.min(old.length, now.length) - head && old.at(-1 - tail) === now.at(-1 - tail)) tail += 1;
  const part = (lines: readonly string[], sign: string) =>
    lines
      .slice(head, lines.length - tail)
      .map((line) => `${sign} ${line}\n`)
      .join('');
  return `${path}:${head + 1}\n${part(old, '-')}${part(now, '+')}`;
}
