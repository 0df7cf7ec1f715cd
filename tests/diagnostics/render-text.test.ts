import { describe, expect, it } from 'vitest';
import { compareFindings, type Finding } from '../../src/diagnostics/finding.ts';
import { renderText } from '../../src/diagnostics/render-text.ts';
import { sourceFile } from '../../src/source/source-file.ts';
import { wholeFile } from '../../src/source/span.ts';

const style = { colour: false, width: 80 };

/** Prints one finding about the first place of `marked` in a file's text. */
function print(text: string, marked: string, extra: Partial<Finding> = {}, width = 80) {
  const source = sourceFile('a/guide.md', text);
  const start = text.indexOf(marked);
  const at = { file: 'a/guide.md', start, end: start + marked.length };
  const finding: Finding = {
    code: 'x-wrong',
    severity: 'error',
    message: 'it is wrong',
    at,
    notes: [],
    ...extra,
  };
  const sources = new Map([[source.path, source]]);
  return renderText([finding], { sources, prefix: 'guides/' }, { ...style, width });
}

describe('renderText', () => {
  it('shows place, message, excerpt, second place and likely mend', () => {
    const text = '::tool[7 mm socket]{#socket-7}\n\nWork :remove[arch]{with=socket-8}.\n';
    const at = { file: 'a/guide.md', start: text.indexOf('socket-8'), end: text.indexOf('socket-8') + 8 };
    const first = text.indexOf('socket-7');
    expect(
      print(text, 'socket-8', {
        severity: 'warning',
        notes: [
          { message: 'declared here', at: { file: 'a/guide.md', start: first, end: first + 8 } },
          { message: 'did you mean "socket-7"?' },
        ],
        suggestion: { at, text: 'socket-7' },
      }),
    ).toBe(
      [
        'guides/a/guide.md:3:25: warning x-wrong',
        '  it is wrong',
        '     3 | Work :remove[arch]{with=socket-8}.',
        '       |                         ~~~~~~~~',
        '  declared here (guides/a/guide.md:1:22)',
        '     1 | ::tool[7 mm socket]{#socket-7}',
        '       |                      ~~~~~~~~',
        '  did you mean "socket-7"?',
        '  likely mend: write socket-7',
      ].join('\n'),
    );
  });

  it('gives a file as a whole without line or excerpt', () => {
    expect(print('', '', { at: wholeFile('a/guide.md') })).toBe(
      'guides/a/guide.md: error x-wrong\n  it is wrong',
    );
    expect(print('', '', { at: wholeFile('photo.jpg') })).toBe(
      'guides/photo.jpg: error x-wrong\n  it is wrong',
    );
  });

  it('keeps the mark under its text after tabs, wide letters, accents and emoji', () => {
    const marks = (text: string) => print(text, 'X').split('\n').slice(2);
    expect(marks('a\tX')).toEqual(['     1 | a   X', '       |     ~']);
    expect(marks('ねじ X')).toEqual(['     1 | ねじ X', '       |      ~']);
    expect(marks('e\u0301 X')).toEqual(['     1 | e\u0301 X', '       |   ~']);
    expect(marks('👩‍🔧 X')).toEqual(['     1 | 👩‍🔧 X', '       |    ~']);
  });

  it('cuts a long line around the fault', () => {
    const long = `${'a'.repeat(100)} XYZ ${'b'.repeat(100)}`;
    expect(print(long, 'XYZ', {}, 40).split('\n').slice(2)).toEqual([
      '     1 | …aaaaaaaaaaaaa XYZ bbbbbbbbbbb…',
      '       |                ~~~',
    ]);
    expect(print(long, 'b'.repeat(100), {}, 40).split('\n').slice(2)).toEqual([
      '     1 | …aaaaaaa XYZ bbbbbbbbbbbbbbbbb…',
      '       |              ~~~~~~~~~~~~~~~~~',
    ]);
  });

  it('marks a span over several lines on its first line only, and the end of a text with one mark', () => {
    expect(print('one\ntwo\n', 'one\ntwo').split('\n').slice(2)).toEqual(['     1 | one', '       | ~~~']);
    const end = { file: 'a/guide.md', start: 3, end: 3 };
    expect(print('one', '', { at: end }).split('\n').slice(2)).toEqual(['     1 | one', '       |    ~']);
  });

  it('lets no text of a guide steer the terminal', () => {
    const printed = print('a \u001b[31mred\u202e X', 'X', { message: 'bad \u001b]0;title\u0007' });
    expect(printed).toBe(
      'guides/a/guide.md:1:13: error x-wrong\n  bad □]0;title□\n     1 | a □[31mred□ X\n       |             ~',
    );
  });

  it('colours only when asked', () => {
    const source = sourceFile('g.md', 'X');
    const at = { file: 'g.md', start: 0, end: 1 };
    const finding: Finding = { code: 'x', severity: 'error', message: 'm', at, notes: [] };
    const context = { sources: new Map([['g.md', source]]), prefix: '' };
    expect(renderText([finding], context, { ...style, colour: true })).toContain('\u001b[31merror\u001b[39m');
    expect(renderText([finding], context, style)).not.toContain('\u001b');
  });
});

describe('compareFindings', () => {
  it('sorts by file, place and code', () => {
    const at = (file: string, start: number, code: string): Finding => ({
      code,
      severity: 'error',
      message: '',
      at: { file, start, end: start },
      notes: [],
    });
    const sorted = [at('b', 0, 'a'), at('a', 9, 'a'), at('a', 1, 'z'), at('a', 1, 'b')].sort(compareFindings);
    expect(sorted.map((one) => `${one.at.file}${one.at.start}${one.code}`)).toEqual([
      'a1b',
      'a1z',
      'a9a',
      'b0a',
    ]);
  });
});
