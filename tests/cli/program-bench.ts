import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { onTestFinished } from 'vitest';
import { repository } from '../driver.ts';
import { filesBelow } from '../site/workspace.ts';

/** A folder with a workspace, and the program as it was built, run in it with one store or another. */
export async function programBench() {
  const folder = await mkdtemp(join(tmpdir(), 'baybook program '));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  return {
    have: async (files: { readonly [path: string]: string }) => {
      await rm(join(folder, 'guides'), { recursive: true, force: true });
      for (const [path, text] of Object.entries(files)) {
        const full = join(folder, 'guides', path);
        await mkdir(dirname(full), { recursive: true });
        await writeFile(full, text);
      }
    },
    /** @param killedAfter milliseconds, after which the program is killed where it still runs */
    build: async (store: string, killedAfter?: number) => {
      const env = { ...process.env, XDG_CACHE_HOME: join(folder, store) };
      const began = performance.now();
      const child = spawn(process.execPath, [join(repository, 'dist/cli/main.js'), 'build'], {
        cwd: folder,
        env,
      });
      let said = '';
      for (const stream of [child.stdout, child.stderr])
        stream.on('data', (chunk) => {
          said += chunk;
        });
      const timer = killedAfter === undefined ? null : setTimeout(() => child.kill('SIGKILL'), killedAfter);
      const ended = await new Promise<{ code: number | null; killed: boolean }>((done) => {
        child.on('close', (code, signal) => done({ code, killed: signal === 'SIGKILL' }));
      });
      if (timer) clearTimeout(timer);
      return { ...ended, said, process: child.pid, took: performance.now() - began };
    },
    /** The site without Baybook's list of it, and what else of Baybook's lies there. */
    site: async () => {
      const files = [...(await filesBelow(join(folder, 'site')))];
      return new Map(files.filter(([path]) => path !== '.baybook-files.json'));
    },
    remnants: async () => {
      const names = await readdir(join(folder, 'site')).catch(() => []);
      return names.filter((name) => /staging|switch|lock/.test(name));
    },
    /** Waits until a build is at work on the site. */
    taken: async () => {
      while (!existsSync(join(folder, 'site/.baybook-lock'))) await wait(5);
    },
    forget: (store: string) => rm(join(folder, store), { recursive: true, force: true }),
  };
}
