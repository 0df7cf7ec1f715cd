import { execFile } from 'node:child_process';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { expect, it, onTestFinished } from 'vitest';
import { corpus } from '../bench/corpus.ts';
import { repository } from '../driver.ts';
import { exampleWorkspace } from '../example-workspace.ts';
import { long } from '../samples.ts';
import { filesBelow } from '../site/workspace.ts';

/** The built program, as users run it; a thread is a file of its own there. */
async function build(folder: string, threads: number) {
  const site = `site of ${threads}`;
  const args = ['build', '--threads', String(threads), '--out', site];
  const env = { ...process.env, XDG_CACHE_HOME: join(folder, `store of ${threads}`) };
  const main = join(repository, 'dist/cli/main.js');
  const { stdout, stderr } = await promisify(execFile)(process.execPath, [main, ...args], {
    cwd: folder,
    env,
  });
  return { said: `${stderr}${stdout.replace(site, 'site')}`, files: await filesBelow(join(folder, site)) };
}

// Two threads start from 16 guides, four from 32. In each run they are small ones.
const more = long ? [2, 4] : [2];

/** One guide has something to find, as a warning, so that findings cross threads too. */
function workspace(): ReadonlyMap<string, string> {
  if (!long) return small(16);
  const files = new Map(corpus(40));
  const third = files.get('job-3/guide.md') ?? '';
  return files.set('job-3/guide.md', third.replace('## ', '::tool{#steel-rule}\n\n## '));
}

function small(guides: number): ReadonlyMap<string, string> {
  const look = '::step[Look around]{#look}\n\nLook behind the edge.\n';
  const { 'example/guide.md': sound = '', ...shared } = exampleWorkspace(look);
  const warned = exampleWorkspace(`::tool[Lamp]{#lamp}\n\n${look}`)['example/guide.md'] ?? '';
  const own = Array.from(
    { length: guides },
    (_, index) => [`job-${index}/guide.md`, index === 3 ? warned : sound] as const,
  );
  return new Map([...Object.entries(shared), ...own]);
}

it('give the same bytes and findings, however many share the work', { timeout: 600_000 }, async () => {
  const folder = await mkdtemp(join(tmpdir(), 'baybook threads '));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  for (const [path, text] of workspace()) {
    const full = join(folder, 'guides', path);
    await mkdir(dirname(full), { recursive: true });
    await writeFile(full, text);
  }
  const alone = await build(folder, 1);
  expect(alone.said).toContain('1 warning');
  for (const threads of more) expect(await build(folder, threads)).toEqual(alone);
});
