import { Composer, type CST, type Document, Lexer, Parser, YAMLParseError } from 'yaml';

/** Why a text is not taken for YAML that a person wrote. */
type Excess = 'large' | 'deep';

/** Words and marks of one text; a tool with everything that can be said of it is some fifty. */
export const mostLexemes = 130_000;

/** Maps and lists in one another: many more than any file needs, and far fewer than would exhaust the stack. */
const mostLevels = 64;

/**
 * Reads a text into a YAML document with the place of each node. Work and depth are bounded while it is read, since
 * the parser has no bound of its own: one character may open a level, and one more be an entry.
 */
export function composeYaml(text: string): Document.Parsed | { readonly excess: Excess } {
  const tokens = tokensOf(text);
  if ('excess' in tokens) return tokens;
  const composer = new Composer({ prettyErrors: false, uniqueKeys: false, version: '1.2' });
  const [first, second] = composer.compose(tokens, true, text.length);
  // A document is always given, if need be an empty one.
  const document = first as Document.Parsed;
  if (second) {
    const [start, end] = second.range;
    document.errors.push(new YAMLParseError([start, end], 'MULTIPLE_DOCS', 'more than one document'));
  }
  return document;
}

function tokensOf(text: string): CST.Token[] | { readonly excess: Excess } {
  const parser = new Parser();
  const tokens: CST.Token[] = [];
  let count = 0;
  for (const lexeme of new Lexer().lex(text)) {
    for (const token of parser.next(lexeme)) tokens.push(token);
    count += 1;
    if (count > mostLexemes) return { excess: 'large' };
    if (parser.stack.length > mostLevels) return { excess: 'deep' };
  }
  tokens.push(...parser.end());
  return tokens;
}
