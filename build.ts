import { readdirSync, rmSync } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { parse } from 'acorn';
import { simple } from 'acorn-walk';
import { type BuildOptions, build } from 'esbuild';

/**
 * Writes `dist/`: the program in a few files, and the browser's scripts, each in one.
 */
const repository = import.meta.dirname;

const program: BuildOptions = {
  entryPoints: ['src/cli/main.ts', 'src/site/guides/crew-member.ts'],
  entryNames: '[name]',
  outdir: 'dist/cli',
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20.19',
  // They need files of their own; esbuild itself is only loaded by a run from source.
  external: ['esbuild', 'sharp', 'tinypool'],
  banner: {
    js: "import{createRequire as __createRequire}from'node:module';const require=__createRequire(import.meta.url);",
  },
  sourcemap: true,
  sourcesContent: false,
};

const scripts: BuildOptions = {
  entryPoints: readdirSync(join(repository, 'templates/scripts'))
    .filter((name) => name.endsWith('.ts'))
    .map((name) => `templates/scripts/${name}`),
  outdir: 'dist/scripts',
  format: 'iife',
  target: 'es2022',
  minify: true,
};

if (process.argv[1] && resolve(process.argv[1]) === import.meta.filename) {
  rmSync(join(repository, 'dist'), { recursive: true, force: true });
  await Promise.all([written(program, withSharedShapes), written(scripts, (code) => code)]);
}

async function written(options: BuildOptions, change: (code: string) => string): Promise<void> {
  const { outputFiles } = await build({
    ...{ absWorkingDir: repository, bundle: true, charset: 'utf8', logLevel: 'warning', write: false },
    ...options,
  });
  for (const { path, text } of outputFiles ?? []) {
    await mkdir(dirname(path), { recursive: true });
    await writeFile(path, path.endsWith('.js') ? change(text) : text);
  }
}

/**
 * Has `{ ...some, more }` written as `{ ...null, ...some, more }`, which means the same. The V8 of Node 20 copies an object
 * that begins with a spread in one go, to a shape that it never shares: each field that is added after that makes
 * one more shape, a microsecond a copy and a kilobyte that only a whole collection clears, and with the shapes goes what was
 * optimized for them. A spread further on is copied field by field, along shapes that are shared. A tenth of a build was
 * spent on it, in our code and more so in that of packages. Source maps stay right to the line.
 */
export function withSharedShapes(code: string): string {
  const starts: number[] = [];
  simple(parse(code, { ecmaVersion: 'latest', sourceType: 'module' }), {
    ObjectExpression: ({ properties: [first, ...others] }) => {
      if (first?.type === 'SpreadElement' && others.length > 0) starts.push(first.start);
    },
  });
  const ends = [...starts.sort((a, b) => a - b), code.length];
  return ends.map((end, index) => code.slice(ends[index - 1] ?? 0, end)).join('...null, ');
}
