import { readFileSync } from 'node:fs';

/** Baybook's version. From `src/cli` and from `dist/cli` alike, package.json stands two folders up. */
export const version: string = JSON.parse(
  readFileSync(new URL('../../package.json', import.meta.url), 'utf8'),
).version;
