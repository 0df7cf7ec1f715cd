import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainText } from '../../src/html/prose.ts';
import type { Span } from '../../src/source/span.ts';
import type { TextDirective } from '../../src/syntax/tree.ts';
import { runs } from '../samples.ts';
import { read } from './reading.ts';

/** Every place in a value, however deep. */
function spansIn(value: unknown): Span[] {
  if (typeof value !== 'object' || value === null) return [];
  const own = 'start' in value && 'end' in value && 'file' in value ? [value as unknown as Span] : [];
  return [...own, ...Object.values(value).flatMap(spansIn)];
}

/** Text rich in what Markdown and directives are made of. */
const pieces = [
  '::',
  ':::',
  ':',
  'step',
  'tool',
  'note',
  '[',
  ']',
  '{',
  '}',
  '#',
  '=',
  '"',
  "'",
  '“',
  '.',
  ',',
  ' ',
  '\n',
  '\r\n',
  '\t',
  '- ',
  '> ',
  '1. ',
  '|',
  '---',
  '\n\n',
  '`',
  '*',
  '_',
  '\\',
  '<',
  '>',
  '<!--',
  '-->',
  '[^1]',
  '[^1]: ',
  '![',
  '](',
  ')',
  '~~',
  '&amp;',
  '\u00a0',
  '\uFEFF',
  '\0',
  'é',
  '🔧',
  '__proto__',
  'constructor',
  'a',
  '7',
  ':tool[x]',
  '{#a}',
];
const markdownLike = fc.array(fc.constantFrom(...pieces), { maxLength: 40 }).map((list) => list.join(''));
const anyText = fc.oneof(markdownLike, fc.string({ unit: 'binary', maxLength: 200 }));

describe('any text at all', () => {
  it('is read without a fault of ours, and every place lies within it', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const { document, findings } = read(text);
        for (const { start, end } of spansIn([document, findings])) {
          expect(start).toBeGreaterThanOrEqual(0);
          expect(end).toBeGreaterThanOrEqual(start);
          expect(end).toBeLessThanOrEqual(text.length);
        }
      }),
      runs(100, 400),
    );
  });

  it('is read alike each time', () => {
    fc.assert(
      fc.property(markdownLike, (text) => void expect(read(text)).toEqual(read(text))),
      runs(25, 50),
    );
  });
});

describe('a sentence without directives', () => {
  const word = fc.stringMatching(/^[A-Za-z0-9é]{1,6}$/);
  const joint = fc.constantFrom(' ', ': ', ':', ' :', ':) ', ' (:', '/', ', ', ': :', ' - ');
  const sentence = fc
    .array(fc.tuple(word, joint), { minLength: 1, maxLength: 12 })
    .map((list) => `A${list.map(([a, b]) => `${b}${a}`).join('')}.`)
    .filter((text) => !/\s{2}/.test(text));

  it('keeps every colon', () => {
    fc.assert(
      fc.property(sentence, (text) => {
        const { document, findings } = read(text);
        const words = document.nodes.map((node) =>
          node.type === 'directive' ? '' : plainText<TextDirective>(node.content, () => ''),
        );
        expect(words.join('')).toBe(text);
        expect(findings).toEqual([]);
      }),
      runs(100, 300),
    );
  });
});

describe('a damaged file', () => {
  const refused = (text: string) => {
    const { document, findings, sound } = read(text);
    expect(findings.map(({ code, at }) => [code, at.start, at.end])).toEqual([['text-oversized', 0, 0]]);
    expect([document.nodes, sound]).toEqual([[], false]);
  };

  it('of a megabyte is refused before it is parsed', () => {
    refused(':'.repeat(1_000_000));
  });

  it.each([
    ['quotations', '> '.repeat(20_000)],
    ['quotations without spaces', '>'.repeat(20_000)],
    ['list marks', '- + '.repeat(10_000)],
    ['numbered list marks', '1. '.repeat(10_000)],
    ['containers', ':::note\n'.repeat(5_000)],
    ['containers of other sizes', '::::note\ntext\n\n'.repeat(5_000)],
    ['mentions', 'the :tool[lamp] and '.repeat(5_001)],
    ['directives', '::tool{#a colour=1}\n\n'.repeat(5_001)],
    ['containers side by side', ':::note\nText.\n:::\n\n'.repeat(5_001)],
    ['emphasis', `${'*a _b '.repeat(200)}${'b_ a* '.repeat(200)}`],
  ])('with %s beyond measure is refused', (_, text) => {
    refused(text);
  });

  it('is told how many directives it has, and how many a guide may have', () => {
    const { findings } = read('the :tool[lamp] and '.repeat(9_900));
    expect(findings.map(({ message }) => message)).toEqual([
      '9900 directives and mentions stand in this file; a guide has at most 5000: make two guides of it',
    ]);
  });

  it('of 5,000 mentions is read', () => {
    expect(read(':tool[x] '.repeat(5_000)).sound).toBe(true);
  }, 60_000);

  it('is refused with its front matter read, so that nothing else is missed in it', () => {
    const { document } = read(`---\r\ntitle: Cradle\r\n---\r\n\r\n${'> '.repeat(100)}`);
    expect(document.frontMatter).toMatchObject({ value: 'title: Cradle', at: { start: 5, end: 18 } });
  });

  it('with a long list of attributes is read', () => {
    const text = `::tool[x]{${Array.from({ length: 5_000 }, (_, index) => `a${index}=1`).join(' ')} ${'w '.repeat(5_000)}}`;
    expect(read(text).findings.map(({ code }) => code)).toEqual(['value-unquoted']);
  });

  it('with open brackets, quotes and braces in plenty is read', () => {
    for (const unit of [':tool[', ':tool[x]{a="', '[', '![', '{', '<a ', '`a``b ']) {
      expect(() => read(unit.repeat(2_000))).not.toThrow();
    }
  });
});
