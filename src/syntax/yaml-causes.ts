import type { YAMLError } from 'yaml';

/** Why a YAML text cannot be read, in an author's words, with the place in the text that is to be mended. */
interface YamlCause {
  readonly message: string;
  readonly start: number;
  readonly end: number;
  /** What to write in that place. */
  readonly text?: string;
}

/** What some of the parser's own codes mean to an author; a code that is not here keeps the parser's words. */
const plain: Readonly<Record<string, string>> = {
  BAD_INDENT: 'the keys of one list must all begin at the same column',
  BAD_SCALAR_START: 'a value that begins with this character must stand in quotes',
  MULTIPLE_DOCS: 'a second document begins here; there may be one only',
  BAD_DQ_ESCAPE: 'a backslash in double quotes begins an escape; write two, or use single quotes',
};

/** Explains the first fault that the parser has met. */
export function causeOf({ code, message, pos }: YAMLError, text: string): YamlCause {
  const [at] = pos;
  const here = { start: at, end: Math.max(pos[1], at + 1) };
  if (code === 'BLOCK_AS_IMPLICIT_KEY') return colonInValue(at, text);
  if (message.startsWith('Implicit')) return colonWithoutSpace(at, text);
  if (message.startsWith('Flow') || message.startsWith('Missing closing')) {
    const open = lastOpen(text, at);
    const what = /["']/.test(text[open] ?? '') ? 'quotation mark' : 'bracket';
    return { message: `this ${what} is never closed`, start: open, end: open + 1 };
  }
  if (message.startsWith('Unexpected block-seq'))
    return { ...here, message: 'a list with hyphens begins on the line below its key' };
  if (message.startsWith('Unexpected scalar at node end'))
    return {
      ...here,
      message: 'nothing may follow the closing quotation mark; put the whole value in quotes',
    };
  return { ...here, message: plain[code] ?? message.charAt(0).toLowerCase() + message.slice(1) };
}

/** `title: Van: the long one`, or a line that is set in deeper than the value above it. */
function colonInValue(at: number, text: string): YamlCause {
  const value = /^[^\r\n]*/.exec(text.slice(at))?.[0].trimEnd() ?? '';
  const end = at + value.length;
  if (/:(?:\s|$)/.test(value)) {
    const message = 'a value that holds a colon and a space must stand in quotes';
    return { message, start: at, end, ...(/["\\#]/.test(value) ? {} : { text: `"${value}"` }) };
  }
  const below = /^\s*/.exec(text.slice(end))?.[0].length ?? 0;
  const start = end + below;
  const message =
    'this line is set in further than the value above allows; begin it at the column of that key';
  return { message, start, end: start + (/^[^\r\n:]*/.exec(text.slice(start))?.[0].length ?? 1) };
}

/** `revision:2`, or a line without any colon. */
function colonWithoutSpace(at: number, text: string): YamlCause {
  const line = /^[^\r\n]*/.exec(text.slice(at))?.[0].trimEnd() ?? '';
  const [, key, value] = /^([\w-]+):(\S.*)$/.exec(line) ?? [];
  const place = { start: at, end: at + line.length };
  if (key === undefined)
    return { ...place, message: 'this line has no colon with a space after it, as in title: …' };
  return { ...place, message: 'a space must follow the colon', text: `${key}: ${value}` };
}

/** The last quotation mark or bracket before a place that nothing closes; the place itself where there is none. */
function lastOpen(text: string, before: number): number {
  const open: number[] = [];
  let last = '\n';
  for (let place = 0; place < before; place += 1) {
    const sign = text[place] ?? '';
    const begins = /[\n:,[{-]/.test(last);
    const quote = text[open.at(-1) ?? -1];
    if (quote === '"' || quote === "'") {
      if (sign === '\\' && quote === '"') place += 1;
      else if (sign === quote) open.pop();
    } else if (sign === '#' && /\s/.test(text[place - 1] ?? '\n')) {
      place = nextLine(text, place);
    } else if (begins && /["'[{]/.test(sign)) open.push(place);
    else if (/[\]}]/.test(sign)) open.pop();
    if (/\S/.test(sign) || (sign === '\n' && open.length === 0)) last = sign;
  }
  return open.at(-1) ?? before;
}

function nextLine(text: string, from: number): number {
  const end = text.slice(from).search(/[\r\n]/);
  return end < 0 ? text.length : from + end;
}
