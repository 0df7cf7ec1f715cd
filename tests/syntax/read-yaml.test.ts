import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { collector } from '../../src/diagnostics/report.ts';
import { lineColumn, sourceFile } from '../../src/source/source-file.ts';
import { readYaml, yamlText, yamlYesNo } from '../../src/syntax/read-yaml.ts';

const schema = z.strictObject({
  title: yamlText,
  revision: yamlText.optional(),
  units: z.enum(['metric', 'us']).optional(),
  crew: z.number({ error: 'a whole number' }).int().min(1).optional(),
  options: z
    .record(z.string(), z.union([yamlText, z.strictObject({ 'one-of': z.record(z.string(), yamlText) })]))
    .optional(),
  builds: z.array(z.record(z.string(), z.union([yamlYesNo, z.string()]))).optional(),
});

/** Reads front matter that stands after `---` in a file, so that every place is off by a line. */
function read(yaml: string) {
  const before = '---\n';
  const source = sourceFile('guide.md', `${before}${yaml}\n---\n`);
  const at = { file: 'guide.md', start: before.length, end: before.length + yaml.length };
  const { findings, report } = collector();
  const result = readYaml({ value: yaml, at }, schema, report);
  const printed = findings.map((one) => {
    const { line, column } = lineColumn(source, one.at.start);
    return `${line}:${column} ${one.code} ${one.message}${one.suggestion ? ` -> ${one.suggestion.text}` : ''}`;
  });
  return {
    result,
    printed,
    text: (span: { start: number; end: number }) => source.text.slice(span.start, span.end),
  };
}

describe('readYaml', () => {
  it('returns the typed value and the place of every key and value', () => {
    const { result, printed, text } = read(
      'title: Lamp cradle\r\nrevision: 3\r\nbuilds:\r\n  - {fog: yes, lamps: led}',
    );
    expect(printed).toEqual([]);
    expect(result?.value).toEqual({
      title: 'Lamp cradle',
      revision: '3',
      builds: [{ fog: true, lamps: 'led' }],
    });
    expect(text(result?.valueAt(['title']) ?? { start: 0, end: 0 })).toBe('Lamp cradle');
    expect(text(result?.keyAt(['builds', 0, 'lamps']) ?? { start: 0, end: 0 })).toBe('lamps');
    expect(text(result?.valueAt(['builds', 0, 'lamps']) ?? { start: 0, end: 0 })).toBe('led');
    expect(text(result?.keyAt(['builds', 5]) ?? { start: 0, end: 0 })).toBe('builds');
  });

  it.each([
    [
      'title: Lamp: cradle',
      '2:8 yaml-broken the YAML cannot be read: a value that holds a colon and a space must stand in quotes -> "Lamp: cradle"',
    ],
    [
      'title: a\nrevision:3',
      '3:1 yaml-broken the YAML cannot be read: a space must follow the colon -> revision: 3',
    ],
    [
      'revision:3\ntitle: a',
      '2:1 yaml-broken the YAML cannot be read: a space must follow the colon -> revision: 3',
    ],
    [
      'title: a\nrevision 3',
      '3:1 yaml-broken the YAML cannot be read: this line has no colon with a space after it, as in title: …',
    ],
    [
      'title: a\n  revision: 3',
      '3:3 yaml-broken the YAML cannot be read: this line is set in further than the value above allows; begin it at the column of that key',
    ],
    [
      "title: 'a' nut\nrevision: 3",
      '2:12 yaml-broken the YAML cannot be read: nothing may follow the closing quotation mark; put the whole value in quotes',
    ],
    [
      'builds: - fog',
      '2:9 yaml-broken the YAML cannot be read: a list with hyphens begins on the line below its key',
    ],
    [
      "title: it's [a\nbuilds: [{fog: 'it''s]', lamps: [b}",
      '3:33 yaml-broken the YAML cannot be read: this bracket is never closed',
    ],
    ['title:', '2:1 yaml-wrong-value "title" should be text, not empty'],
    [
      'title: # 3 of 4\nrevision: 3',
      '2:8 yaml-wrong-value "title" is empty, since YAML takes what follows # for a comment; put it in quotes -> "# 3 of 4"',
    ],
    ['title: a\n\trevision: 3', '3:1 yaml-tab YAML is indented with spaces, not with a tab'],
    [
      'title: a\noptions:\n  fog: b\n lamps: c',
      '5:1 yaml-broken the YAML cannot be read: the keys of one list must all begin at the same column',
    ],
    ['title: [a\nrevision: 3', '2:8 yaml-broken the YAML cannot be read: this bracket is never closed'],
    [
      'title: "a\nrevision: 3',
      '2:8 yaml-broken the YAML cannot be read: this quotation mark is never closed',
    ],
    ['title: a\ntitle: b', '3:1 yaml-duplicate-key "title" is written twice'],
    [
      'title: *b',
      '2:8 yaml-alias-unknown YAML takes "*b" for a reference, and nothing is named so; text needs quotes -> "*b"',
    ],
    ['%YAML 1.1\n---\ntitle: no', '2:1 yaml-version this line asks for YAML 1.1; take it out'],
    ['title: !x a', '2:8 yaml-broken the YAML cannot be read: unresolved tag: !x'],
    ['', '2:1 yaml-not-a-map expected keys with values (title: …), found nothing'],
    ['# a comment', '2:1 yaml-not-a-map expected keys with values (title: …), found nothing'],
    ['- a\n- b', '2:1 yaml-not-a-map expected keys with values (title: …), found something else'],
    [
      'title: 010',
      '2:8 yaml-needs-quotes YAML reads 010 as 10; put it in quotes to keep it as written -> "010"',
    ],
    [
      'title: a\nrevision: 1.10',
      '3:11 yaml-needs-quotes YAML reads 1.10 as 1.1; put it in quotes to keep it as written -> "1.10"',
    ],
    [
      'title: a\nrevision: 1e3',
      '3:11 yaml-needs-quotes YAML reads 1e3 as 1000; put it in quotes to keep it as written -> "1e3"',
    ],
    ['revision: 3', '2:1 yaml-missing-key "title" is missing; it should be text'],
    ['title: a\nrevison: 3', '3:1 yaml-unknown-key "revison" is not a key that is known here -> revision'],
    ['title: true', '2:8 yaml-wrong-value "title" should be text, not the boolean "true" -> "true"'],
    ['title:', '2:1 yaml-wrong-value "title" should be text, not empty'],
    [
      'title: a\nunits: metrc',
      '3:8 yaml-wrong-value "units" should be "metric" or "us", not "metrc" -> metric',
    ],
    ['title: a\ncrew: two', '3:7 yaml-wrong-value "crew" should be a whole number, not "two"'],
    [
      'title: a\noptions:\n  lamps: {one-off: {a: b}}',
      '4:11 yaml-unknown-key "one-off" is not a key that is known here -> one-of',
    ],
    ['title: a\noptions: fog', '3:10 yaml-wrong-value "options" should be a map of keys, not "fog"'],
  ])('points at the fault in %j', (yaml, expected) => {
    expect(read(yaml).printed).toEqual([expected]);
  });

  it.each([
    ['keys within keys', `options: ${'? '.repeat(20_000)}`],
    ['lists within lists', `options: ${'['.repeat(20_000)}`],
    ['maps within maps', `options: ${'{a: '.repeat(20_000)}`],
    [
      'keys each set in further',
      Array.from({ length: 300 }, (_, depth) => `${' '.repeat(depth)}a:`).join('\n'),
    ],
  ])('refuses %s without end', (_, yaml) => {
    expect(read(yaml).printed).toEqual(['2:1 text-oversized lists or maps stand too deep in one another']);
  });

  it('refuses more than one file can be meant to hold, before it is read to its end', () => {
    const yaml = (count: number) =>
      `options: {${Array.from({ length: count }, (_, i) => `a${i}: b`).join(', ')}}`;
    expect(read(yaml(100_000)).printed).toEqual([
      '2:1 text-oversized this YAML is too large: it has more than 130 thousand words and marks; take out what no guide uses',
    ]);
  });

  it('refuses references that multiply', () => {
    const rows = [
      'a: &a [x, x]',
      ...'bcdefgh'
        .split('')
        .map(
          (k, i) =>
            `${k}: &${k} [${'*'}${'abcdefgh'[i]}, *${'abcdefgh'[i]}, *${'abcdefgh'[i]}, *${'abcdefgh'[i]}]`,
        ),
    ];
    expect(read(rows.join('\n')).printed).toEqual([
      '2:1 yaml-alias-bomb the references in this text multiply past all use',
    ]);
  });
});
