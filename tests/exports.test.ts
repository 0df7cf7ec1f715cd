import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { repository } from './driver.ts';

/** Every source text by its path from the repository's folder. */
const texts = new Map(
  ['src', 'templates/scripts', 'tests', 'guides'].flatMap((folder) =>
    readdirSync(join(repository, folder), { recursive: true, encoding: 'utf8' })
      .filter((path) => path.endsWith('.ts'))
      .map((path): [string, string] => [
        join(folder, path),
        readFileSync(join(repository, folder, path), 'utf8'),
      ]),
  ),
);

const declared = /^export (?:async )?(?:const|function|class|interface|type) ([A-Za-z_$][\w$]*)/gm;

/** What each file of the program exports by declaring it: `[file, name]`. The scripts of a page are programs of their own. */
const exported = [...texts].flatMap(([file, text]) =>
  file.startsWith('src/') ? [...text.matchAll(declared)].map(([, name = '']) => [file, name] as const) : [],
);

it('no exported name has two meanings', () => {
  const names = exported.map(([, name]) => name);
  expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
});

it('what nobody imports is not exported', () => {
  const users = new Map<string, Set<string>>();
  for (const [file, text] of texts) {
    for (const [word] of text.matchAll(/[A-Za-z_$][\w$]*/g)) {
      const known = users.get(word);
      if (known) known.add(file);
      else users.set(word, new Set([file]));
    }
  }
  const lonely = exported.filter(([, name]) => users.get(name)?.size === 1);
  expect(lonely.map(([file, name]) => `${file}: ${name}`)).toEqual([]);
});
