import { execFile } from 'node:child_process';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { expect, it, onTestFinished } from 'vitest';
import { corpus } from '../bench/corpus.ts';
import { repository } from '../driver.ts';
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

// Two threads start from 16 guides, four from 32.
const [guides, more] = process.env.LONG ? [40, [2, 4]] : [16, [2]];

it('give the same bytes and findings, however many share the work', { timeout: 600_000 }, async () => {
  const folder = await mkdtemp(join(tmpdir(), 'baybook threads '));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  for (const [path, text] of corpus(guides)) {
    const full = join(folder, 'guides', path);
    await mkdir(dirname(full), { recursive: true });
    // One guide has something to find, as a warning, so that findings cross threads too.
    await writeFile(
      full,
      path === 'job-3/guide.md' ? text.replace('## ', '::tool{#steel-rule}\n\n## ') : text,
    );
  }
  const alone = await build(folder, 1);
  expect(alone.said).toContain('1 warning');
  for (const threads of more) expect(await build(folder, threads)).toEqual(alone);
});
