import { describe, expect, it } from 'vitest';
import { stoppingCodes, syntaxRules } from '../../src/syntax/rules/index.ts';
import { found, place, read, written } from './reading.ts';

/** The text of an example that is a body or a single file. */
const textOf = (example: (typeof syntaxRules)[number]['bad']) =>
  typeof example === 'string' ? example : (Object.values(example)[0] ?? '');

describe('the rules of syntax', () => {
  it.each(syntaxRules.map((card) => [card.code, card] as const))(
    '%s: its bad example shows it alone, its good one nothing',
    (code, card) => {
      expect(read(textOf(card.bad)).findings.map((one) => [one.code, one.severity])).toEqual([
        [code, card.severity],
      ]);
      expect(read(textOf(card.good)).findings).toEqual([]);
    },
  );

  it.each(syntaxRules.map((card) => [card.code, card] as const))(
    '%s stops later stages or not, as it says',
    (code, card) => {
      expect(read(textOf(card.bad)).sound).toBe(!stoppingCodes.has(code));
      expect(read(textOf(card.good)).sound).toBe(true);
    },
  );

  it('has each code once', () => {
    const codes = syntaxRules.map(({ code }) => code);
    expect(new Set(codes).size).toBe(codes.length);
  });
});

describe('a directive that Markdown reads as text', () => {
  const start = 'this directive is read as text: ';
  const straight = 'write straight quotes (") and not “';
  it.each([
    [
      '::tool[a] foo',
      '" foo"',
      'nothing may follow on this line; put the words in square brackets, or on a line below',
    ],
    [
      ':::note title\nx\n:::',
      '" title"',
      'nothing may follow on this line; put the words in square brackets, or on a line below',
    ],
    [':: tool[a]', '" "', 'no space may stand between the colons and the name'],
    ['::: note\nfoo\n\nbar\n\n:::', '" "', 'no space may stand between the colons and the name'],
    ['::tool [a]', '" "', 'no space may stand before [ or {'],
    [':::note {a=1}\nx\n:::', '" "', 'no space may stand before [ or {'],
    ['::tool[a', '"["', 'this label is not closed; its ] must stand on the same line'],
    ['::tool[a\nb]{#c}', '"["', 'this label is not closed; its ] must stand on the same line'],
    ['::tool{a="b}', '"""', 'this quotation mark is not closed on its line'],
    ['::tool{a=“b c”}', '"“"', straight],
    [
      '::tool{a="b \\"c\\""}',
      '"\\""',
      "a backslash does not hide a quotation mark; use '…' around the value",
    ],
    ['::tool{size=1/4"}', '"""', 'a quotation mark within a bare value; for inches write size="1/4 in"'],
    ['::tool{a=1,b=2}', '","', 'attributes are separated by spaces, not by commas'],
    ['::tool{a="1",b="2"}', '","', 'attributes are separated by spaces, not by commas'],
    ['::tool{count=}', '"="', '"count=" has no value'],
    ['::tool{a=1\u00a0b=2}', '"\u00a0"', 'this is a no-break space; type an ordinary space'],
    [
      '::tool{a=1\nb=2}',
      '"{"',
      'these attributes are not closed; the } must stand on the same line as the {',
    ],
    ['::kit{torque=25 N·m}', '"·"', 'put the value in quotes, as in note="25 N·m"'],
    [
      '::a:b[x]',
      '":"',
      '":" cannot stand here; a name has letters, digits and hyphens, then [label] and {attributes}',
    ],
    [
      '::a.b[x]',
      '"."',
      '"." cannot stand here; a name has letters, digits and hyphens, then [label] and {attributes}',
    ],
    ['::', '"::"', null],
  ])('%s', (text, at, message) => {
    expect(found(text)).toEqual([
      message === null
        ? `fence-stray at ${at}: these colons close nothing; no container is open here`
        : `directive-unreadable at ${at}: ${start}${message}`,
    ]);
    expect(read(text).sound).toBe(false);
  });

  it('is told of on each of its lines, and the rest of the text is judged still', () => {
    const text = 'Words\n::tool[x] y\nmore :tool{a=1}\n\n::stepp[z]';
    expect(read(text).findings.map(({ code }) => code)).toEqual([
      'directive-unreadable',
      'directive-unlabelled',
      'directive-unknown',
    ]);
  });

  it('hides in HTML', () => {
    expect(found('<div>\n::step[x]{#x}\n</div>')).toHaveLength(1);
  });

  it('is left alone in a comment and in code', () => {
    expect(found('<!-- ::step[x] y\n::step -->\n\n```\n::step[x] y\n```\n\n`::step[x] y`')).toEqual([]);
  });
});

describe('half a directive within a sentence', () => {
  it.each([
    [
      ':tighten[n] {with=x}',
      '" "',
      'the braces belong to :tighten and must follow it directly, with no space or line break',
    ],
    [
      ':tighten[n]\n{with=x}',
      '"\n"',
      'the braces belong to :tighten and must follow it directly, with no space or line break',
    ],
    [
      ':tighten[n]{with=“a b”}',
      '"“"',
      'part of this :tighten is read as text: write straight quotes (") and not “',
    ],
    [
      'Then :tighten[n and on',
      '"["',
      'part of this :tighten is read as text: this label is not closed; its ] must stand on the same line',
    ],
  ])('%s', (text, at, message) => {
    expect(found(text)).toEqual([`directive-half-read at ${at}: ${message}`]);
  });

  it('is not seen in an escape, in code or in an unknown bare word', () => {
    expect(found('\\:tighten[n, `:tighten[n`, :smile and {braces}')).toEqual([]);
  });
});

describe('attributes', () => {
  it('joins the words of an unquoted value, with one finding and the mend', () => {
    const text = '::tool[Wrench]{#w say=lift it away temporary}';
    const { findings, document, sound } = read(text);
    expect(found(text)).toEqual([
      'value-unquoted at "lift it away": put the value of "say" in quotes: "lift it away"',
    ]);
    expect(findings[0]?.suggestion?.text).toBe('"lift it away"');
    expect(document.nodes[0]).toMatchObject({
      attributes: [
        { name: 'id', value: 'w' },
        { name: 'say', value: 'lift it away' },
        { name: 'temporary', value: null },
      ],
    });
    expect(sound).toBe(true);
  });

  it('leaves a known flag after an unquoted value alone', () => {
    expect(found('::supply[Tape]{#tape count=4 temporary}')).toEqual([]);
  });

  it('refuses a point in an id, and offers a hyphen', () => {
    const { findings, document } = read('::kit[Nut]{#m8.8 count=4}');
    expect(findings.map(({ code, suggestion }) => [code, suggestion?.text])).toEqual([
      ['attribute-class', '#m8-8'],
    ]);
    expect(document.nodes[0]).toMatchObject({
      attributes: [
        { name: 'id', value: 'm8' },
        { name: 'count', value: '4' },
      ],
    });
  });
});

describe('containers', () => {
  it('that are closed too late show the step they swallow, and where they begin', () => {
    const text =
      ':::notice[Cold]\nWarm it.\n\n::step[One]{#one}\n\n::step[Two]{#two}\n\n:::warning[Chips]\nLook.\n:::\n';
    expect(found(text)).toEqual([
      'opening-enclosed at "::step[One]{#one}": ::step stands inside :::notice; close that with a line of colons before it',
    ]);
    const note = read(text).findings[0]?.notes[0];
    expect(note?.at && [place(text, note.at), written(text, note.at)]).toEqual(['1:1', '":::notice[Cold]"']);
  });

  it('that are never closed are told of where they begin', () => {
    const text = ':::notice[Cold]\nWarm it.\n\n## Fit {#fit}\n\n::step[One]{#one}\n';
    expect(found(text)).toEqual([
      'container-unclosed at ":::notice[Cold]": this :::notice is never closed; write ::: on a line of its own where it ends',
    ]);
    const note = read(text).findings[0]?.notes[0];
    expect(note?.at && written(text, note.at)).toBe('"## Fit {#fit}"');
  });

  it('of as many colons cannot stand in one another', () => {
    const text = ':::why\na\n\n:::note\nb\n:::\n\nc\n\n:::\n';
    expect(found(text)).toEqual([
      'container-unclosed at ":::why": this :::why is not closed where :::note begins; write ::: on a line of its own before that',
    ]);
    expect(found(text.replace(':::why', '::::why').replace(/:::\n$/, '::::\n'))).toEqual([]);
  });

  it.each([
    ['- a\n\n  ::step[x]{#x}', 'a list'],
    ['> ::step[x]{#x}', 'a quotation'],
    ['> ## Fit', 'a quotation'],
    ['1. a\n\n   :::note\n   b\n   :::', 'a list'],
    ['a[^1]\n\n[^1]: b\n\n    ::step[x]{#x}', 'a footnote'],
  ])('and lists and quotations open nothing: %s', (text, holder) => {
    const { findings } = read(text);
    expect(findings.map(({ code }) => code)).toEqual(['opening-enclosed']);
    // On the same line there is nothing more to show.
    const shown = text.includes('\n\n');
    expect(findings[0]?.notes[0]?.message).toBe(shown ? `${holder} begins here` : undefined);
    expect(findings[0]?.message).toContain(holder);
  });
});

describe('names', () => {
  it.each([
    ['See :tol[trim-lever].', 'directive-unknown at "tol": there is no directive ":tol"', 'tool'],
    ['::stepp[x]{#x}', 'directive-unknown at "stepp": there is no directive "::stepp"', 'step'],
    [':::warnin\nx\n:::', 'directive-unknown at "warnin": there is no directive ":::warnin"', 'warning'],
    [
      '::remove[x]',
      'directive-form at "remove": "remove" is not written with two colons; write :remove[…] within a sentence',
      undefined,
    ],
    [
      ':note[x]',
      'directive-form at "note": "note" is not written with one colon; write :::note with its content below, closed by :::',
      undefined,
    ],
  ])('%s', (text, message, suggestion) => {
    expect(found(text)).toEqual([message]);
    expect(read(text).findings[0]?.suggestion?.text).toBe(suggestion);
  });

  it('asks for a label within a sentence, for a known name or not', () => {
    const rule = (name: string) =>
      `:${name} lacks its label; write :${name}[…] with what it names in square brackets`;
    expect(found('a :tool{#x} b')).toEqual([`directive-unlabelled at ":tool{#x}": ${rule('tool')}`]);
    expect(found('a :smile{#x} b')).toEqual([`directive-unlabelled at ":smile{#x}": ${rule('smile')}`]);
  });
});

describe('headings and front matter', () => {
  it('a line under a text', () => {
    expect(found('Words\n---\n')).toHaveLength(1);
    expect(
      place('Words\n---\n', read('Words\n---\n').findings[0]?.at ?? { file: '', start: 0, end: 0 }),
    ).toBe('2:1');
  });

  it('front matter that begins late or never ends gives one finding', () => {
    expect(read('\n---\ntitle: x\n---\n\nWords').findings.map(({ code }) => code)).toEqual([
      'front-matter-unread',
    ]);
    expect(read('---\ntitle: x\n\nWords').findings.map(({ code }) => code)).toEqual(['front-matter-unread']);
    expect(read('---\n\nWords\n').findings).toEqual([]);
  });
});

describe('HTML', () => {
  it('gives one finding for an element, and none for a comment', () => {
    expect(read('The <b>lip</b> is <!-- very --> thin').findings.map(({ code }) => code)).toEqual([
      'html-dropped',
    ]);
    expect(read('<!-- one\n\ntwo -->\n\nWords').findings).toEqual([]);
  });

  it('tells of a comment that never ends, since it hides all that follows', () => {
    expect(found('Words\n\n<!-- one\n\n## Two')).toEqual([
      'html-dropped at "<!--": this comment is never closed, and hides the rest of the text; end it with -->',
    ]);
  });
});
