import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';

const sources = fileURLToPath(new URL('../../templates/scripts/', import.meta.url));
const built = fileURLToPath(new URL('../scripts/', import.meta.url));

/**
 * A browser script by its name, as one classic script: module scripts do not run from `file://`. A built
 * Baybook ships it beside its own code; run from source it is bundled now, in the same way.
 */
export async function browserScript(name: string): Promise<string> {
  const shipped = await readFile(`${built}${name}.js`, 'utf8').catch(() => null);
  if (shipped !== null) return shipped;
  const known = bundles.get(name) ?? bundled(name);
  bundles.set(name, known);
  return known;
}

/** What was bundled, for all the sites of a run: the tests make hundreds. */
const bundles = new Map<string, Promise<string>>();

/** The flags of `npm run build` for the same bundle, as its API has them. */
async function bundled(name: string): Promise<string> {
  const { build } = await import('esbuild');
  const { outputFiles } = await build({
    entryPoints: [`${sources}${name}.ts`],
    bundle: true,
    format: 'iife',
    target: 'es2022',
    minify: true,
    charset: 'utf8',
    write: false,
  });
  const [file] = outputFiles;
  if (!file) throw new Error(`esbuild made nothing of ${name}.ts`);
  return file.text;
}
