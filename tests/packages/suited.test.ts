import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { suited } from '../../build.ts';
import { repository } from '../driver.ts';

/** A module around an expression, with what the expressions below name. */
const code = (expression: string) =>
  `const s = { a: 1, b: 2 }; const t = { b: 3 }; const list = [1, , 2, undefined, [3]]; out = ${expression};`;

/** What a module gives to `out`, as text; `undefined` and holes are told apart. */
function meaning(text: string): string {
  const out = new Function('out', `${text}; return out;`)();
  return JSON.stringify(Array.isArray(out) ? Object.entries(out).map(([at, one]) => [at, `${one}`]) : out);
}

describe('the code of the built program', () => {
  it.each([
    ['{ ...s, c: 3 }', '{ ...null, ...s, c: 3 }'],
    ['{ ...s, ...t }', '{ ...null, ...s, ...t }'],
    [
      '{ ...s, c: { ...t, a: [{ ...t, d: 4 }] } }',
      '{ ...null, ...s, c: { ...null, ...t, a: [{ ...null, ...t, d: 4 }] } }',
    ],
    ['{ ...{ ...s, a: 0 }, b: "{ ...s, c }" }', '{ ...null, ...{ ...null, ...s, a: 0 }, b: "{ ...s, c }" }'],
    ['(({ a, ...rest }) => ({ ...rest }))(s)', null],
    ['{ c: 3, ...s }', null],
    ['[...[s], t]', null],
  ])('lets an object that begins with a spread and goes on begin with nothing: %s', (before, after) => {
    expect(suited(code(before))).toBe(code(after ?? before));
    expect(meaning(suited(code(before)))).toBe(meaning(code(before)));
  });

  it.each([
    ['list.flatMap((one) => one)', '__flatMapped(list, (one) => one)'],
    ['list.flatMap((one, at) => [at, [one], , one])', '__flatMapped(list, (one, at) => [at, [one], , one])'],
    [
      '(s.c ?? list).flatMap((one) => [one]).flatMap((one) => list.flatMap((two) => [one, two]))',
      '__flatMapped(__flatMapped((s.c ?? list), (one) => [one]), (one) => __flatMapped(list, (two) => [one, two]))',
    ],
    [
      '{ flatMap: (f) => f(1) }.flatMap((one) => one)',
      '__flatMapped({ flatMap: (f) => f(1) }, (one) => one)',
    ],
    ['s.list?.flatMap((one) => one) ?? null', null],
    ['s.list?.flat().flatMap((one) => one) ?? null', null],
    ['list.flatMap(function () { return this.a; }, s)', null],
    ['list.flat().map(String)', null],
  ])('maps to lists in a loop: %s', (before, after) => {
    expect(suited(code(before)).startsWith(code(after ?? before))).toBe(true);
    expect(meaning(suited(code(before)))).toBe(meaning(code(before)));
  });

  it('keeps the name of its source map last', () => {
    const text = suited('[].flatMap(String);\n//# sourceMappingURL=a.js.map\n');
    expect(text).toMatch(
      /^__flatMapped\(\[\], String\);\nfunction [\s\S]*\n\/\/# sourceMappingURL=a\.js\.map\n$/,
    );
  });

  it('is suited', () => {
    const program = join(repository, 'dist/cli');
    const modules = readdirSync(program).filter((name) => name.endsWith('.js'));
    const texts = modules.map((name) => readFileSync(join(program, name), 'utf8'));
    for (const sign of [/\{\s*\.\.\.null, /, /__flatMapped\(/])
      expect(texts.filter((text) => sign.test(text)).length).toBeGreaterThan(10);
  });
});
