import type { When } from '../../model/when.ts';
import type { Span } from '../../source/span.ts';
import { bad, good, type Meant, type Reading } from './attribute.ts';

/** More levels than anyone can follow, and far fewer than would exhaust the stack. */
const MOST_LEVELS = 32;

interface Token {
  readonly text: string;
  readonly start: number;
}

/**
 * A condition on the build: option names with `and`, `or`, `not`, `is` and parentheses. `not` binds tighter
 * than `and`, `and` tighter than `or`.
 */
export const when: Meant<When> = {
  means:
    'The builds of the vehicle that this is for: options, joined by `and`, `or`, `not`, and `is` for a choice. Without it, all.',
  expects: 'a condition on the build, as in `fog and not lamps is led`',
  costs: 'condition',
  read: parseWhen,
};

/** Reads a condition; `at` is the place of the text. */
export function parseWhen(text: string, at: Span): Reading<When> {
  const tokens: Token[] = [...text.matchAll(/[()]|[^\s()]+/g)].map((m) => ({ text: m[0], start: m.index }));
  if (tokens.length === 0) return bad('the condition is empty; an option was expected, as in "fog"');
  let next = 0;

  const place = (from: Token | undefined, to: Token | undefined): Span =>
    from && to && at.end - at.start === text.length
      ? { file: at.file, start: at.start + from.start, end: at.start + to.start + to.text.length }
      : at;
  const take = (word: string): boolean => {
    if (tokens[next]?.text !== word) return false;
    next += 1;
    return true;
  };

  function chain(word: 'and' | 'or', part: () => Reading<When>): Reading<When> {
    const from = tokens[next];
    const first = part();
    if (!first.ok) return first;
    const all = [first.value];
    while (take(word)) {
      const more = part();
      if (!more.ok) return more;
      all.push(more.value);
    }
    return all.length === 1 ? first : good({ kind: word, of: all, at: place(from, tokens[next - 1]) });
  }

  function anyOf(depth: number): Reading<When> {
    return chain('or', () => chain('and', () => operand(depth)));
  }

  function operand(depth: number): Reading<When> {
    const from = tokens[next];
    if (depth > MOST_LEVELS) return bad('this condition nests too deep; split the options');
    if (!from) return bad(`"${text}" ends where an option was expected`);
    if (take('not')) {
      const of = operand(depth + 1);
      return of.ok ? good({ kind: 'not', of: of.value, at: place(from, tokens[next - 1]) }) : of;
    }
    if (take('(')) {
      const inner = anyOf(depth + 1);
      if (!inner.ok) return inner;
      return take(')') ? inner : bad(`a closing parenthesis is missing in "${text}"`);
    }
    return option(from);
  }

  function option(from: Token): Reading<When> {
    if (!/^[a-z0-9-]+$/.test(from.text) || ['and', 'or', 'is'].includes(from.text)) {
      return bad(
        `"${from.text}" was found where an option was expected`,
        optionLike(from.text),
        place(from, from),
      );
    }
    next += 1;
    if (!take('is')) return good({ kind: 'has', option: from.text, at: place(from, from) });
    const value = tokens[next];
    if (!value || !/^[a-z0-9-]+$/.test(value.text)) {
      return bad(`a choice was expected after "${from.text} is"`, undefined, place(from, tokens[next - 1]));
    }
    next += 1;
    return good({ kind: 'is', option: from.text, value: value.text, at: place(from, value) });
  }

  const whole = anyOf(0);
  const rest = tokens[next];
  if (whole.ok && rest) {
    return bad(
      `"${rest.text}" was found where "and", "or" or the end was expected`,
      joiners[rest.text],
      place(rest, rest),
    );
  }
  return whole;
}

/** How other languages join conditions. */
const joiners: { readonly [sign: string]: string } = {
  '&': 'and',
  '&&': 'and',
  '+': 'and',
  '|': 'or',
  '||': 'or',
};

/** What was most likely meant by a word that is no option: "Tow" is tow, "!tow" is not tow. */
function optionLike(text: string): string | undefined {
  const [, negated, word = ''] = /^(!?)([a-z0-9-]+)$/i.exec(text) ?? [];
  if (word === '' || ['and', 'or', 'is'].includes(word)) return undefined;
  return `${negated ? 'not ' : ''}${word.toLowerCase()}`;
}
