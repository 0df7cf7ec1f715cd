import { readdirSync, rmSync } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { type CallExpression, parse, type SpreadElement } from 'acorn';
import { simple } from 'acorn-walk';
import { type BuildOptions, build } from 'esbuild';

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

async function written(options: BuildOptions, change: (code: string) => string): Promise<void> {
  const { outputFiles } = await build({
    absWorkingDir: repository,
    bundle: true,
    charset: 'utf8',
    logLevel: 'warning',
    write: false,
    ...options,
  });
  for (const { path, text } of outputFiles ?? []) {
    await mkdir(dirname(path), { recursive: true });
    await writeFile(path, path.endsWith('.js') ? change(text) : text);
  }
}

/**
 * Code that means the same and spares the V8 of Node 20 what it is slow at: a sixth of a build went into it, in our code and
 * more so in that of packages. Source maps stay right to the line.
 */
export function suited(code: string): string {
  const changes: Change[] = [];
  const chains = new Set<number>();
  const flatMaps: CallExpression[] = [];
  simple(parse(code, { ecmaVersion: 'latest', sourceType: 'module' }), {
    ObjectExpression: ({ properties: [first, ...others] }) => {
      if (first?.type === 'SpreadElement' && others.length > 0) changes.push(withSharedShape(first));
    },
    ChainExpression: ({ start }) => void chains.add(start),
    CallExpression: (call) => void (isFlatMap(call) && flatMaps.push(call)),
  });
  // What stands after a question mark may never be called.
  const calls = flatMaps.filter(({ start }) => !chains.has(start));
  changes.push(...calls.flatMap((call) => asFlatMapped(call, code)));
  const changed = applied(changes, code);
  return calls.length === 0 ? changed : changed.replace(/(?=\/\/# sourceMappingURL=.*\s*$)|$/, flatMapped);
}

/** A text in place of what stands between two places of the code. */
interface Change {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

function applied(changes: readonly Change[], code: string): string {
  let done = 0;
  let text = '';
  for (const change of changes.toSorted((one, other) => one.start - other.start)) {
    text += code.slice(done, change.start) + change.text;
    done = change.end;
  }
  return text + code.slice(done);
}

/**
 * Writes `{ ...some, more }` as `{ ...null, ...some, more }`. An object that begins with a spread is copied in one go, to a
 * shape that is never shared: each field that is added after that makes one more shape, a microsecond a copy and a kilobyte
 * that only a whole collection clears, and with the shapes goes what was optimized for them. A spread further on is
 * copied field by field, along shapes that are shared.
 */
function withSharedShape({ start }: SpreadElement): Change {
  return { start, end: start, text: '...null, ' };
}

/** Twenty times as fast as the method of an array, which looks each element up by its name; a hole is left out by both. */
const flatMapped = `function __flatMapped(list, map) {
  if (!Array.isArray(list)) return list.flatMap(map);
  const all = [];
  for (let at = 0; at < list.length; at += 1) {
    const one = list[at];
    if (one === undefined && !(at in list)) continue;
    const found = map(one, at, list);
    if (!Array.isArray(found)) all.push(found);
    else for (let inner = 0; inner < found.length; inner += 1)
      if (found[inner] !== undefined || inner in found) all.push(found[inner]);
  }
  return all;
}
`;

function isFlatMap({ callee, arguments: given }: CallExpression): boolean {
  if (callee.type !== 'MemberExpression' || callee.computed || callee.object.type === 'Super') return false;
  const [map, ...more] = given;
  const isNamed = callee.property.type === 'Identifier' && callee.property.name === 'flatMap';
  return isNamed && map?.type !== 'SpreadElement' && more.length === 0;
}

/** Writes `list.flatMap(map)` as `__flatMapped(list, map)`. */
function asFlatMapped({ start, callee }: CallExpression, code: string): readonly Change[] {
  const name = code.lastIndexOf('.flatMap', callee.end);
  const bracket = code.indexOf('(', callee.end);
  return [
    { start, end: start, text: '__flatMapped(' },
    { start: name, end: bracket + 1, text: ', ' },
  ];
}

// Run as a program, it writes `dist/`: Baybook in a few files, and the browser's scripts, each in one.
if (process.argv[1] && resolve(process.argv[1]) === import.meta.filename) {
  rmSync(join(repository, 'dist'), { recursive: true, force: true });
  await Promise.all([written(program, suited), written(scripts, (code) => code)]);
}
