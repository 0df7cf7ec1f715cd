import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, it } from 'vitest';
import { bench, repository } from './driver.ts';

const read = (path: string) => readFileSync(resolve(repository, path), 'utf8');

it('gives exactly two commands in the README, and runs the second in .ci/run', () => {
  const commands = [...read('README.md').matchAll(/^```sh\n([\s\S]*?)^```/gm)].map((match) =>
    match[1]?.trim(),
  );
  expect(commands).toEqual(['npm run demo', 'npm test']);
  expect(read('.ci/run')).toContain(`exec ${commands[1]}\n`);
});

it('names every runtime dependency, and no other, in DEVELOPERS.md', () => {
  const [, table = ''] = read('DEVELOPERS.md').split('## Runtime dependencies');
  const named = [...table.matchAll(/^\| ([^|]+) \|/gm)].flatMap((match) => (match[1] ?? '').split(', '));
  const known = Object.keys(JSON.parse(read('package.json')).dependencies);
  expect(named.filter((name) => !/^package$|^-+$/.test(name)).sort()).toEqual(known.sort());
});

it('shows a guide in the README that passes', async () => {
  const guide = /^```markdown\n([\s\S]*?)^```/m.exec(read('README.md'))?.[1] ?? '';
  const { check } = await bench({
    'shop.yaml': 'name: Example Fitting\n',
    'tools.yaml': read('guides/tools.yaml'),
    'platforms/larkspur-dray.md': '---\ntitle: Larkspur Dray\n---\n\nA van.\n',
    'lamp-guard/guide.md': guide,
  });
  expect((await check()).out).toBe('1 guide checked: no errors, no warnings\n');
});
