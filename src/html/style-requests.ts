import { hostOf } from './host-of.ts';

/** A place in a style sheet that makes a browser ask another host. */
interface StyleRequest {
  /** Counts from 1. */
  readonly line: number;
  readonly text: string;
}

/** What a style sheet is read as (CSS Syntax 3, 4): comments, strings, names, each with its `(`, and single characters. */
const token =
  /(?<comment>\/\*[\s\S]*?(?:\*\/|$))|(?<string>"(?:\\[\s\S]|[^"\\\n])*"?|'(?:\\[\s\S]|[^'\\\n])*'?)|(?<name>@?(?:\\(?:[0-9a-f]{1,6}\s?|[^\n])|[-\w\u0080-\uffff])+)(?<opens>\(?)|[^\s]/giu;

/** What follows `url(` where it is no string: all to the bracket that closes it. */
const bareAddress = /(?!\s*["'])(?:\\[\s\S]|[^)\\])*/y;

/**
 * Where a style sheet asks for what is not in the site: another host, or a scheme other than `data:`. An address
 * counts in `url()` and wherever a string stands, since functions, imports and variables take strings for addresses;
 * what is only printed (`content`), or compared in a selector (`[href^="…"]`), asks for nothing.
 */
export function styleRequests(css: string): readonly StyleRequest[] {
  const found: StyleRequest[] = [];
  let [line, counted] = [1, 0];
  const tell = (at: number, address: string, text: string) => {
    if (hostOf(address) !== 'elsewhere') return;
    line += css.slice(counted, at).split('\n').length - 1;
    counted = at;
    found.push({ line, text: text.trim() });
  };
  let [functions, brackets] = [0, 0];
  let [property, lastName] = ['', ''];
  token.lastIndex = 0;
  for (let match = token.exec(css); match; match = token.exec(css)) {
    const [text] = match;
    const { comment, string, name, opens } = match.groups ?? {};
    if (comment !== undefined) continue;
    if (string !== undefined) {
      const isPrinted = property === 'content' && functions === 0;
      if (!isPrinted && brackets === 0)
        tell(match.index, unescaped(string.slice(1)).replace(/["']$/, ''), text);
    } else if (name !== undefined) {
      lastName = unescaped(name).toLowerCase();
      if (opens) functions += 1;
      if (opens && lastName === 'url') {
        bareAddress.lastIndex = token.lastIndex;
        const [address = ''] = bareAddress.exec(css) ?? [];
        tell(match.index, unescaped(address.replace(/\/\*.*?\*\//gs, '')), text + address);
        token.lastIndex += address.length;
      }
    } else if (text === '(') functions += 1;
    else if (text === ')') functions = Math.max(0, functions - 1);
    else if (text === '[') brackets += 1;
    else if (text === ']') brackets = Math.max(0, brackets - 1);
    else if (text === ':') property = lastName;
    else if (/[;{}]/.test(text)) [functions, brackets, property] = [0, 0, ''];
  }
  return found;
}

/** A text with each escape as what it stands for; a line that is carried on is one (CSS Syntax 3, 4.3.5 and 4.3.7). */
function unescaped(text: string): string {
  return text.replace(
    /\\(?:([0-9a-f]{1,6})\s?|(\r\n|[\s\S]))/gi,
    (_, code: string | undefined, other: string | undefined) => {
      if (code !== undefined) return characterOf(Number.parseInt(code, 16));
      return /^[\r\n\f]/.test(other ?? '') ? '' : (other ?? '');
    },
  );
}

function characterOf(point: number): string {
  return point <= 0x10ffff ? String.fromCodePoint(point) : '\ufffd';
}
