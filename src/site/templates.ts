import { readdir, readFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { once } from '../job/once.ts';
import type { Layouts } from '../pages/layouts/layouts.ts';

const builtIn = fileURLToPath(new URL('../../templates/', import.meta.url));

/** Where a workspace keeps its own layouts and styles. */
const ownFolder = 'templates/';

/** The layouts and style sheets of a site, by file name. */
interface Templates {
  readonly layouts: Layouts;
  readonly styles: ReadonlyMap<string, string>;
  /** Names of those that are the workspace's own. */
  readonly own: ReadonlySet<string>;
}

/** The files of a workspace, as far as templates are read from them. */
interface TemplateFiles {
  readonly paths: Iterable<string>;
  readonly read: (path: string) => Uint8Array | null;
}

/**
 * Reads the built-in layouts and styles, each replaced by the workspace's own file of the same name. A name is one
 * whatever folder the built-in file stands in, so that a shop need not know the folders.
 */
export async function readTemplates(workspace: TemplateFiles): Promise<Templates> {
  const { texts: builtInTexts, ...builtInOnly } = await readBuiltIn();
  const texts = new Map(builtInTexts);
  const own = new Set<string>();
  for (const path of [...workspace.paths].sort()) {
    const name = path.startsWith(ownFolder) ? path.slice(ownFolder.length) : '';
    const bytes = texts.has(name) ? workspace.read(path) : null;
    if (!bytes) continue;
    texts.set(name, new TextDecoder().decode(bytes));
    own.add(name);
  }
  return own.size === 0 ? { ...builtInOnly, own } : { ...byKind(texts), own };
}

/** What comes with the program, read once: the same layouts are the same object, which is made ready once. */
const readBuiltIn = once(async () => {
  const paths = (await readdir(builtIn, { recursive: true })).filter(isTemplate).sort();
  const read = async (path: string) => [basename(path), await readFile(join(builtIn, path), 'utf8')] as const;
  const texts: ReadonlyMap<string, string> = new Map(await Promise.all(paths.map(read)));
  return { texts, ...byKind(texts) };
});

function byKind(texts: ReadonlyMap<string, string>): Pick<Templates, 'layouts' | 'styles'> {
  const ending = (end: string) => new Map([...texts].filter(([name]) => name.endsWith(end)));
  return { layouts: ending('.liquid'), styles: ending('.css') };
}

/** What of others stands in every site, with its licences. */
export function readNotices(): Promise<string> {
  return readFile(join(builtIn, 'notices.txt'), 'utf8');
}

function isTemplate(name: string): boolean {
  return name.endsWith('.liquid') || name.endsWith('.css');
}

/** Whether a file of a workspace may stand in the place of a built-in layout or style. */
export function isTemplatePath(path: string): boolean {
  return path.startsWith(ownFolder);
}
