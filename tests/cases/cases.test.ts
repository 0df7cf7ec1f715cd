import { existsSync, readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { baybook } from '../driver.ts';
import { expectText } from '../expect-text.ts';

/**
 * Each folder beside this file is a workspace with what `baybook check` says of it, word for word, in
 * `expected.txt`. `UPDATE=1` writes that file anew; a person reads the difference.
 */
const names = readdirSync(import.meta.dirname, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map((entry) => entry.name)
  .sort();

describe('cases', () => {
  it('are found on disk', () => {
    expect(names.length).toBeGreaterThan(0);
  });

  it.each(names)('%s', async (name) => {
    const folder = resolve(import.meta.dirname, name);
    expect(existsSync(resolve(folder, 'expected.txt')) || process.env.UPDATE === '1').toBe(true);
    const { code, out, err } = await baybook(folder, 'check', '--guides', '.');
    expectText(`${out}${err}exit ${code}\n`, resolve(folder, 'expected.txt'));
  });
});
