import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { expect } from 'vitest';

/** Holds a text against a file of the repository; `UPDATE=1` writes the file, for a person to read. */
export function expectText(text: string, file: string): void {
  if (process.env.UPDATE === '1') {
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, text);
  }
  expect(text).toBe(readFileSync(file, 'utf8'));
}
