/** What keeps a line from being a directive, with its place in the line. */
export interface Cause {
  readonly message: string;
  readonly start: number;
  readonly end: number;
  /** Whether the fault may run on over the following lines, as an unclosed brace does. */
  readonly runsOn?: true;
}

const curly = /[“”„‟‘’‚«»]/;
const quoteIt = 'put the value in quotes, as in note="25 N·m"';

/**
 * Says why a line that begins with colons is not read as a directive. The line is read as the directive
 * syntax reads it (name, label, attributes, nothing after), up to the first thing that does not fit.
 */
export function explainBroken(line: string): Cause {
  const colons = /^:+/.exec(line)?.[0].length ?? 0;
  const space = /^\s+/.exec(line.slice(colons));
  if (space) return cause(colons, space[0].length, 'no space may stand between the colons and the name');
  const name = /^[\p{L}\p{N}_][\p{L}\p{N}_-]*/u.exec(line.slice(colons))?.[0] ?? '';
  if (name === '') return cause(colons, 1, 'a name must follow the colons directly');
  return afterName(line, colons + name.length);
}

/** The same for what follows a name: label, attributes and the rest of the line. */
export function afterName(line: string, from: number): Cause {
  let place = from;
  if (line[place] === '[') {
    const end = labelEnd(line, place);
    if (end === null) {
      return {
        ...cause(place, 1, 'this label is not closed; its ] must stand on the same line'),
        runsOn: true,
      };
    }
    place = end;
  }
  const gap = /^\s+(?=[[{])/.exec(line.slice(place));
  if (gap) return cause(place, gap[0].length, 'no space may stand before [ or {');
  if (line[place] === '{') {
    const end = attributesEnd(line, place + 1);
    if (typeof end !== 'number') return end;
    place = end;
  }
  const rest = line.slice(place).trimEnd();
  if (/^\s/.test(rest)) {
    return cause(
      place,
      rest.length,
      'nothing may follow on this line; put the words in square brackets, or on a line below',
    );
  }
  if (rest === '')
    return cause(0, line.length, 'this line is not read as a directive; leave an empty line before it');
  return cause(
    place,
    1,
    `"${rest[0]}" cannot stand here; a name has letters, digits and hyphens, then [label] and {attributes}`,
  );
}

function labelEnd(line: string, open: number): number | null {
  let depth = 0;
  for (let place = open; place < line.length; place += 1) {
    if (line[place] === '\\') place += 1;
    else if (line[place] === '[') depth += 1;
    else if (line[place] === ']' && --depth === 0) return place + 1;
  }
  return null;
}

/** The place after the closing brace, or what is wrong before it. */
function attributesEnd(line: string, from: number): number | Cause {
  let place = from;
  let loose = false;
  while (place < line.length) {
    if (line[place] === '}') return place + 1;
    const space = /^[ \t]+/.exec(line.slice(place));
    if (space) {
      place += space[0].length;
      continue;
    }
    const word = /^(?:[#.][^\s"'#.<=>`}]+|[\p{L}\p{N}_-][\p{L}\p{N}_.:-]*)/u.exec(line.slice(place))?.[0];
    if (!word) return strayCharacter(line, place, loose);
    place += word.length;
    const equals = /^[ \t]*=[ \t]*/.exec(line.slice(place));
    loose = loose && !equals;
    if (!equals || /^[#.]/.test(word)) continue;
    const end = valueEnd(line, place + equals[0].length, word);
    if (typeof end !== 'number') return end;
    loose = !/["']/.test(line[end - 1] ?? '');
    place = end;
  }
  const message = 'these attributes are not closed; the } must stand on the same line as the {';
  return { ...cause(from - 1, 1, message), runsOn: true };
}

function valueEnd(line: string, from: number, name: string): number | Cause {
  const quote = line[from];
  if (quote === undefined || quote === '}') return cause(from - 1, 1, `"${name}=" has no value`);
  if (quote === '"' || quote === "'") return quotedEnd(line, from, quote);
  const value = /^[^\s}]+/.exec(line.slice(from))?.[0] ?? '';
  if (curly.test(quote)) return cause(from, 1, `write straight quotes (") and not ${quote}`);
  const bad = value.search(/["'<=>`]/);
  if (bad < 0) return from + value.length;
  const comma = value.lastIndexOf(',', bad);
  if (value[bad] === '=' && comma >= 0)
    return cause(from + comma, 1, 'attributes are separated by spaces, not by commas');
  if (/["']/.test(value[bad] ?? '')) {
    return cause(from + bad, 1, `a quotation mark within a bare value; for inches write ${name}="1/4 in"`);
  }
  return cause(from + bad, 1, `"${value[bad]}" cannot stand in a bare value; ${quoteIt}`);
}

function quotedEnd(line: string, from: number, quote: string): number | Cause {
  const close = line.indexOf(quote, from + 1);
  if (close < 0) return { ...cause(from, 1, 'this quotation mark is not closed on its line'), runsOn: true };
  if (line[close - 1] === '\\') {
    const other = quote === '"' ? "'" : '"';
    return cause(
      close - 1,
      2,
      `a backslash does not hide a quotation mark; use ${other}…${other} around the value`,
    );
  }
  const after = line[close + 1];
  if (after === undefined || /[ \t}]/.test(after)) return close + 1;
  if (after === ',') return cause(close + 1, 1, 'attributes are separated by spaces, not by commas');
  return cause(close + 1, 1, 'a space is missing after this quotation mark');
}

function strayCharacter(line: string, place: number, loose: boolean): Cause {
  const character = line[place] ?? '';
  if (/\s/.test(character)) return cause(place, 1, 'this is a no-break space; type an ordinary space');
  if (character === ',') return cause(place, 1, 'attributes are separated by spaces, not by commas');
  if (curly.test(character)) return cause(place, 1, `write straight quotes (") and not ${character}`);
  if (character === '"' || character === "'")
    return cause(place, 1, 'this quotation mark has no name and = before it');
  return cause(
    place,
    1,
    loose ? quoteIt : `"${character}" cannot stand here; attributes are written name=value`,
  );
}

function cause(start: number, length: number, message: string): Cause {
  return { message, start, end: start + length };
}
