import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { withSharedShapes } from '../../build.ts';
import { repository } from '../driver.ts';

it('an object that begins with a spread and goes on begins with nothing, and means the same', () => {
  const code = (text: string) => `const s = { a: 1, b: 2 }; const t = { b: 3 }; out = ${text};`;
  const meaning = (text: string) => JSON.stringify(new Function('out', `${text}; return out;`)());
  const written = {
    '{ ...s, c: 3 }': '{ ...null, ...s, c: 3 }',
    '{ ...s, ...t }': '{ ...null, ...s, ...t }',
    '{ ...s, c: { ...t, a: [{ ...t, d: 4 }] } }':
      '{ ...null, ...s, c: { ...null, ...t, a: [{ ...null, ...t, d: 4 }] } }',
    '{ ...{ ...s, a: 0 }, b: "{ ...s, c }" }': '{ ...null, ...{ ...null, ...s, a: 0 }, b: "{ ...s, c }" }',
    '(({ a, ...rest }) => ({ ...rest }))(s)': '(({ a, ...rest }) => ({ ...rest }))(s)',
    '{ c: 3, ...s }': '{ c: 3, ...s }',
    '[...[s], t]': '[...[s], t]',
  };
  for (const [before, after] of Object.entries(written)) {
    expect(withSharedShapes(code(before))).toBe(code(after));
    expect(meaning(code(before)), before).toBe(meaning(code(after)));
  }
});

it('the built program has no other', () => {
  const program = join(repository, 'dist/cli');
  const modules = readdirSync(program).filter((name) => name.endsWith('.js'));
  const texts = modules.map((name) => readFileSync(join(program, name), 'utf8'));
  expect(texts.filter((text) => /\{\s*\.\.\.null, /.test(text)).length).toBeGreaterThan(10);
  expect(texts.join('\n')).not.toMatch(/\{ \.\.\.(?!null,)[\w.]+, /);
});
