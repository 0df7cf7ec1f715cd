import { lstat, readdir, readFile, realpath } from 'node:fs/promises';
import { join, relative, resolve, sep } from 'node:path';
import type { Listing, WorkspaceFiles } from './workspace-files.ts';

/** Folders that are never an author's: a workspace may be a repository with packages installed. */
const ignoredFolders = new Set(['node_modules']);

/** The files under a folder. Nothing outside it is ever read, and no symbolic link is followed. */
export function diskFiles(root: string): WorkspaceFiles {
  return {
    list: async () => {
      const files = new Map<string, number>();
      const links: string[] = [];
      await listFolder(root, '', files, links);
      return { files, links } satisfies Listing;
    },
    read: async (path) => {
      try {
        const full = await inside(root, path);
        return full === null ? null : await readFile(full);
      } catch {
        return null;
      }
    },
  };
}

async function listFolder(root: string, folder: string, files: Map<string, number>, links: string[]) {
  const entries = await readdir(join(root, folder), { withFileTypes: true });
  entries.sort((a, b) => (a.name < b.name ? -1 : 1));
  for (const entry of entries) {
    if (entry.name.startsWith('.') || ignoredFolders.has(entry.name)) continue;
    const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
    if (entry.isSymbolicLink()) links.push(path);
    else if (entry.isDirectory()) await listFolder(root, path, files, links);
    else if (entry.isFile()) files.set(path, (await lstat(join(root, path))).size);
  }
}

/** The real path of a file; `null` where it leaves the workspace or is reached through a link. */
async function inside(root: string, path: string): Promise<string | null> {
  const top = await realpath(root);
  const full = resolve(top, path);
  const within = relative(top, full);
  if (within === '' || within.startsWith(`..${sep}`) || within === '..' || resolve(within) === within)
    return null;
  return (await realpath(full)) === full ? full : null;
}
