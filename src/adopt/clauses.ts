import type { Verb } from '../model/inline.ts';
import { fasteners } from './inventory.ts';
import { numberPattern, numberWritten } from './words.ts';

/** What a verb of an old guide asks for, in the verbs of the format. `put-in` is for what is new or was taken off. */
export type DeedKind =
  | 'remove'
  | 'refit'
  | 'put-in'
  | 'tighten'
  | 'loosen'
  | 'disconnect'
  | 'connect'
  | 'discard';

const verbs: { readonly [kind in DeedKind]: readonly string[] } = {
  remove: [
    'remove',
    'undo',
    'unscrew',
    'unbolt',
    'take off',
    'take out',
    'take away',
    'lift off',
    'lift out',
    'pull off',
    'pull out',
    'pry off',
    'prise off',
    'prise out',
    'detach',
    'unclip',
    'withdraw',
    'turn out',
    'lever off',
  ],
  refit: ['refit', 'reinstall', 're-install', 're-fit', 'put back'],
  'put-in': [
    'fit',
    'install',
    'mount',
    'attach',
    'insert',
    'hang',
    'run on',
    'screw in',
    'screw on',
    'fix',
    'set',
    'put',
    'bolt',
    'screw',
    'fasten',
  ],
  tighten: ['tighten', 'torque', 'retighten', 're-tighten', 'torque up', 'tighten up'],
  loosen: ['loosen', 'slacken', 'back off'],
  disconnect: ['disconnect', 'unplug'],
  connect: ['connect', 'reconnect', 'plug in', 're-connect'],
  discard: ['discard', 'throw away', 'scrap'],
};

/** The verb by which the format prints what is done, so that other words of the old guide are kept by `say=`. */
export const ownWord: { readonly [kind in DeedKind]: Verb } = {
  remove: 'remove',
  refit: 'refit',
  'put-in': 'fit',
  tighten: 'tighten',
  loosen: 'loosen',
  disconnect: 'disconnect',
  connect: 'connect',
  discard: 'discard',
};

/** A thing as a sentence names it. */
export interface Named {
  /** From its article or number on. */
  readonly from: number;
  readonly to: number;
  /** Without article and number; `them` and `it` stay as they are. */
  readonly name: string;
  /** `null` where the words give none. */
  readonly count: number | null;
  readonly definite: boolean;
  readonly eachSide: boolean;
  /** A drive in brackets behind the name. */
  readonly drive: string | null;
  /** What follows and tells it from others: `from the rear edge`. */
  readonly qualifier: string;
}

/** What a sentence asks to be done to a thing; or, without a kind, a number of fasteners that it speaks of. */
export interface Clause {
  readonly kind: DeedKind | null;
  /** The verb as it is written. */
  readonly says: string;
  readonly from: number;
  readonly named: Named;
  /** What stands before a number of fasteners: `with`, `by`. */
  readonly before: string;
}

const kindOf = new Map(
  Object.entries(verbs).flatMap(([kind, list]) => list.map((verb) => [verb, kind as DeedKind] as const)),
);
const anyVerb = [...kindOf.keys()].sort((a, b) => b.length - a.length).join('|');
/** A verb is a command at the beginning of a sentence or of a clause. */
const commands = new RegExp(
  `(?:^|(?<=[,;:–—]\\s)|(?<=\\b(?:and|then|first|next|finally|now|again|carefully|gently|slowly),?\\s))(${anyVerb})\\s+`,
  'gi',
);
const numbers = new RegExp(`\\b(?:${numberPattern})\\s+(?=\\p{L})`, 'giu');

/** All that a sentence does and counts, in its order. */
export function clausesOf(sentence: string): readonly Clause[] {
  const clauses: Clause[] = [];
  for (const match of sentence.matchAll(commands)) {
    const [whole, says = ''] = match;
    const kind = kindOf.get(says.toLowerCase());
    let named = namedAt(sentence, match.index + whole.length);
    if (!kind || !named) continue;
    if (/^put$/i.test(says)) {
      const back = /^\s+back\b/.exec(sentence.slice(named.to))?.[0];
      if (back === undefined) continue;
      named = { ...named, to: named.to + back.length };
      clauses.push({ kind: 'refit', says: 'put back', from: match.index, named, before: '' });
      continue;
    }
    clauses.push({ kind, says, from: match.index, named, before: '' });
    for (let next = alsoNamed(sentence, named, kind); next; next = alsoNamed(sentence, next, kind))
      clauses.push({ kind, says, from: next.from, named: next, before: '' });
  }
  for (const { index } of sentence.matchAll(numbers)) {
    if (clauses.some(({ from, named }) => from <= index && index < named.to)) continue;
    const named = namedAt(sentence, index);
    if (named?.count == null || !isFastener.test(named.name)) continue;
    const before = /([\p{L}]+)\s+(?:the\s+|all\s+)*$/iu.exec(sentence.slice(0, index))?.[1] ?? '';
    clauses.push({ kind: null, says: '', from: index, named, before: before.toLowerCase() });
  }
  return clauses.sort((a, b) => a.from - b.from);
}

const isFastener = new RegExp(`(?:^|[\\s-])(?:${fasteners})s?$`, 'i');

/** `… and the four nuts`, `… to 47 Nm, then the nuts to 22 Nm`: another thing of the same command. */
function alsoNamed(sentence: string, { to }: Named, kind: DeedKind): Named | null {
  const then = /^\s*(?:to|at)\s[^,;]*?(?:,\s*|\s+)(?:and|then|and then)\s+(?=the\s)/i.exec(
    sentence.slice(to),
  );
  const named = kind === 'tighten' && then ? namedAt(sentence, to + then[0].length) : null;
  if (named && isFastener.test(named.name) && /^\s*(?:to|at|\()\s*\d/.test(sentence.slice(named.to)))
    return named;
  const and = new RegExp(`^(?:,| and|, and)\\s+(?=(?:the |both )?(?:${numberPattern})\\s+\\p{L})`, 'iu').exec(
    sentence.slice(to),
  );
  return and ? namedAt(sentence, to + and[0].length) : null;
}

/** Words that end the name of a thing. */
const ends = new Set(
  'from of on in at with using to and that which who by as for holding securing retaining fixing into onto behind under over out off away back aside along until then before after so but up down clear or if is are while without inside outside through near when where upwards downwards forward forwards backwards rearwards inwards outwards sideways loose free level together again only first now properly firmly evenly fully finger hand carefully gently per starting working halfway gently against between above below not'.split(
    ' ',
  ),
);

const articles = /^(?:all (?:of )?the|both (?:of )?the|each of the|the|both|all|each|a|an|your)\s+/i;

function namedAt(sentence: string, from: number): Named | null {
  const rest = sentence.slice(from);
  const pronoun = /^(?:(?:them|it|these)\b|both(?=\s*(?:[,.;]|$)))/iu.exec(rest)?.[0];
  if (pronoun)
    return { ...nothingSaid, from, to: from + pronoun.length, name: pronoun.toLowerCase(), definite: true };
  const article = articles.exec(rest)?.[0] ?? '';
  const number = new RegExp(`^(${numberPattern})\\s+(?:x\\s+)?`, 'i').exec(rest.slice(article.length));
  const start = article.length + (number?.[0].length ?? 0);
  let end = start;
  let words = 0;
  for (const { index, 0: word } of rest.slice(start).matchAll(/[^\s,;:!?()]+/g)) {
    if (words > 0 && /[,;:!?()]/.test(rest.slice(end, start + index))) break;
    const bare = word.replace(/\.+$/, '');
    if (ends.has(bare.toLowerCase()) || /[^b]ly$/.test(bare) || words === 7) break;
    end = start + index + bare.length;
    words += 1;
    if (bare !== word) break;
  }
  const name = rest.slice(start, end);
  if (!/\p{L}{2}|^M\d/u.test(name)) return null;
  const after = rest.slice(end);
  const counted = /^\s*\((?:x\s*|×\s*)?(\d{1,3})(?:\s*(?:off|x|×|pcs))?\)/i.exec(after);
  const side = /^\s+(?:on|from|at) each side\b/i.exec(after);
  const drive = /^\s*\(((?:T|E|PH|PZ)\s?\d{1,3})\)/i.exec(after)?.[1] ?? null;
  const qualifier =
    /^\s+((?:from|of|on|in|at|along|under|behind|holding|securing|retaining|that hold|which hold)\s[^,.;:()]+?)(?=[,.;:()]|\s(?:and|then|with|using|to|by)\b|$)/i.exec(
      after,
    )?.[1];
  return {
    from,
    to: from + end + (counted?.[0].length ?? side?.[0].length ?? 0),
    name,
    count: numberWritten(number?.[1] ?? counted?.[1] ?? '') ?? (/^both/i.test(article) ? 2 : null),
    definite: article !== '' && !/^(?:a|an)\s/i.test(article),
    eachSide: side !== null,
    drive: drive?.replace(/\s/, '').toUpperCase() ?? null,
    qualifier: side ? '' : (qualifier ?? ''),
  };
}

const nothingSaid = { count: null, definite: false, eachSide: false, drive: null, qualifier: '' };
