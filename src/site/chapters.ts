import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Chapter, chapterOf } from '../handbook/chapters.ts';
import { once } from '../job/once.ts';

const folder = fileURLToPath(new URL('../../handbook/', import.meta.url));

/** Reads the handbook's chapters, by name: once, since they come with the program. */
export const readChapters = once(async (): Promise<readonly Chapter[]> => {
  const names = (await readdir(folder)).filter((name) => name.endsWith('.md')).sort();
  return Promise.all(
    names.map(async (name) =>
      chapterOf(name.replace(/\.md$/, ''), await readFile(join(folder, name), 'utf8')),
    ),
  );
});
