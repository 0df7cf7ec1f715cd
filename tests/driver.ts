import { cp, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { onTestFinished } from 'vitest';
import type { Io } from '../src/cli/io.ts';
import { run } from '../src/cli/run.ts';
import { pictureStore } from './picture-store.ts';

/** What a command line answered. */
export interface Answer {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Finished work, kept for the tests of one file: names are hashes of contents, so no test sees another's. */
const store = await pictureStore();

/** Runs a command line in a folder, as a terminal without colours that is 100 cells wide would. */
export async function baybook(cwd: string, ...args: string[]): Promise<Answer> {
  return command(cwd, args, null);
}

/** The same with a person at the terminal, who gives these answers and then presses Enter. */
export async function asked(cwd: string, answers: readonly string[], ...args: string[]): Promise<Answer> {
  const left = [...answers];
  return command(cwd, args, async () => left.shift() ?? '');
}

async function command(cwd: string, args: readonly string[], ask: Io['ask']): Promise<Answer> {
  const written = { out: '', err: '' };
  const code = await run(args, {
    out: (text) => {
      written.out += text;
    },
    err: (text) => {
      written.err += text;
    },
    cwd,
    width: 100,
    colour: false,
    watched: false,
    ask,
    store,
    threads: 1,
  });
  return { code, ...written };
}

/** A folder with a workspace in `guides/` and its site in `site/`. */
export interface Bench {
  readonly folder: string;
  /** Writes a file of the workspace. */
  readonly write: (path: string, content: string | Uint8Array) => Promise<void>;
  /** Changes a file of the workspace; what is looked for must be there. */
  readonly change: (path: string, from: string, to: string) => Promise<void>;
  /** Takes a file or folder out of the workspace. */
  readonly remove: (path: string) => Promise<void>;
  readonly check: (...args: string[]) => Promise<Answer>;
  readonly build: (...args: string[]) => Promise<Answer>;
  /** A file of the site as text. */
  readonly page: (path: string) => Promise<string>;
  /** Every file of the site by its path, sorted. */
  readonly site: () => Promise<ReadonlyMap<string, Buffer>>;
}

/** Makes a workspace of files (text or bytes by path) or of a folder to copy; it is gone when the test ends. */
export async function bench(
  contents: { readonly [path: string]: string | Uint8Array } | string,
): Promise<Bench> {
  const folder = await mkdtemp(join(tmpdir(), 'baybook-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  const guides = join(folder, 'guides');
  await mkdir(guides);
  const write = async (path: string, content: string | Uint8Array) => {
    await mkdir(dirname(join(guides, path)), { recursive: true });
    await writeFile(join(guides, path), content);
  };
  if (typeof contents === 'string') await cp(contents, guides, { recursive: true });
  else for (const [path, content] of Object.entries(contents)) await write(path, content);
  return {
    folder,
    write,
    change: async (path, from, to) => {
      const text = await readFile(join(guides, path), 'utf8');
      if (!text.includes(from)) throw new Error(`${path} does not hold ${JSON.stringify(from)}`);
      await write(path, text.replace(from, to));
    },
    remove: (path) => rm(join(guides, path), { recursive: true }),
    check: (...args) => baybook(folder, 'check', ...args),
    build: (...args) => baybook(folder, 'build', ...args),
    page: (path) => readFile(join(folder, 'site', path), 'utf8'),
    site: () => filesOf(join(folder, 'site')),
  };
}

async function filesOf(folder: string): Promise<ReadonlyMap<string, Buffer>> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() => []);
  const paths = entries.flatMap((entry) => (entry.isFile() ? [join(entry.parentPath, entry.name)] : []));
  const files = new Map<string, Buffer>();
  for (const path of paths.sort())
    files.set(relative(folder, path).split(sep).join('/'), await readFile(path));
  return files;
}

/** The repository's own folder. */
export const repository = resolve(import.meta.dirname, '..');
