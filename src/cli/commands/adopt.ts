import { readFileSync, realpathSync, statSync } from 'node:fs';
import { readFile, stat } from 'node:fs/promises';
import { basename, dirname, relative, resolve, sep } from 'node:path';
import { type AdoptedGuide, adopted, Unreadable } from '../../adopt/index.ts';
import { MAX_PICTURE_BYTES } from '../../pictures/limits.ts';
import { diskFiles } from '../../shop/files/disk-files.ts';
import { fillIn } from '../../shop/marked-places.ts';
import { openWorkspace } from '../../shop/open-workspace.ts';
import { type ExitCode, type Io, UsageError } from '../io.ts';
import { workspaceFolder } from '../workspace.ts';
import { idOf, platformOf, writeNew } from '../write-new.ts';

interface AdoptOptions {
  readonly guides: string;
  readonly platform?: string;
  readonly title?: string;
}

/** `baybook adopt`: drafts a guide from each old one, and marks what its author has to decide; all files or none. */
export async function adopt(files: readonly string[], options: AdoptOptions, io: Io): Promise<ExitCode> {
  if (options.title !== undefined && files.length > 1)
    throw new UsageError('--title is for one old guide; give each its own run');
  const { root } = await workspaceFolder(options.guides, io);
  const workspace = await openWorkspace(diskFiles(root));
  const platform = await platformOf(options.platform, workspace, io);
  const all = new Map<string, string | Uint8Array>();
  const left: string[] = [];
  for (const file of files) {
    const draft = await drafted(file, io, {
      shop: workspace.shop,
      platform,
      from: basename(file),
      title: options.title ?? null,
    });
    const id = idOf(undefined, draft.title === '' ? basename(file).replace(/\.\w+$/, '') : draft.title);
    if (all.has(`${id}/guide.md`))
      throw new UsageError(
        `${file} has the title of another one, ${id}; give each its own run, with --title`,
      );
    all.set(`${id}/guide.md`, draft.text);
    for (const [path, bytes] of draft.pictures) all.set(`${id}/${path}`, bytes);
    left.push(`${id}: ${draft.text.split(fillIn).length - 1} places to decide`);
  }
  await writeNew(root, all, io);
  for (const line of left) io.out(`${line}\n`);
  io.out('Next: baybook check lists each place with the old words beside it\n');
  return 0;
}

async function drafted(file: string, io: Io, given: Parameters<typeof adopted>[3]): Promise<AdoptedGuide> {
  const path = resolve(io.cwd, file);
  const found = await stat(path).catch(() => null);
  if (!found?.isFile()) throw new UsageError(`there is no file "${file}"`);
  try {
    return await adopted(basename(file), await readFile(path), besides(dirname(path)), given);
  } catch (error) {
    if (error instanceof Unreadable) throw new UsageError(`${file} is not read: ${error.message}`);
    throw error;
  }
}

/** Reads pictures that lie in the old guide's own folder or below it; no link leads out of there. */
function besides(folder: string): (path: string) => Uint8Array | null {
  const home = realpathSync(folder);
  return (path) => {
    try {
      const real = realpathSync(resolve(home, path));
      const way = relative(home, real);
      if (way === '' || way.startsWith('..') || resolve(way) === way || way.split(sep).includes('..'))
        return null;
      const { size } = statSync(real);
      return size > MAX_PICTURE_BYTES ? null : new Uint8Array(readFileSync(real));
    } catch {
      return null;
    }
  };
}
