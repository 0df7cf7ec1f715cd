import { readFileSync, realpathSync } from 'node:fs';
import { lstat, readdir } from 'node:fs/promises';
import { join, relative, resolve, sep } from 'node:path';
import { sha256 } from '../../store/content-hash.ts';
import type { FileHashes } from '../../store/file-hashes.ts';
import type { Listing, WorkspaceFiles } from './workspace-files.ts';

/** Folders that are never an author's: a workspace may be a repository with packages installed. */
const ignoredFolders = new Set(['node_modules']);

/**
 * The files under a folder. Nothing outside it is ever read, and no symbolic link is followed.
 *
 * @param hashes what is known of the folder's files; without it each is read to be hashed
 */
export function diskFiles(root: string, hashes: FileHashes | null = null): WorkspaceFiles {
  const read = (path: string) => {
    const there = onDisk(root, path);
    try {
      return there && readFileSync(there.full);
    } catch {
      return null;
    }
  };
  return {
    list: async () => {
      const files = new Map<string, number>();
      const links: string[] = [];
      const closed: string[] = [];
      await listFolder(root, '', files, links, closed);
      return { files, links, closed } satisfies Listing;
    },
    read,
    hash: (path) => {
      if (hashes) {
        const there = onDisk(root, path);
        return there && hashes.of(there.path);
      }
      const bytes = read(path);
      return bytes && sha256(bytes);
    },
  };
}

/**
 * Where a file is, by the name that the disk has for it; `null` where {@link inside} finds none. Some systems keep "ü" as "u"
 * and a mark; here every name is composed, and looked for decomposed where it must be.
 */
function onDisk(root: string, path: string): { readonly path: string; readonly full: string } | null {
  const composed = inside(root, path);
  if (composed !== null) return { path, full: composed };
  const apart = path.normalize('NFD');
  const full = apart === path ? null : inside(root, apart);
  return full === null ? null : { path: apart, full };
}

async function listFolder(
  root: string,
  folder: string,
  files: Map<string, number>,
  links: string[],
  closed: string[],
) {
  const entries = await readdir(join(root, folder), { withFileTypes: true }).catch((cause: unknown) => {
    if (folder === '') throw cause;
    closed.push(folder);
    return [];
  });
  entries.sort((a, b) => (a.name < b.name ? -1 : 1));
  for (const entry of entries) {
    if (entry.name.startsWith('.') || ignoredFolders.has(entry.name)) continue;
    const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
    if (entry.isSymbolicLink()) links.push(path);
    else if (entry.isDirectory()) await listFolder(root, path, files, links, closed);
    else if (entry.isFile()) files.set(path.normalize('NFC'), (await lstat(join(root, path))).size);
  }
}

/** The real path of a file; `null` where there is none, it leaves the workspace, or it is reached through a link. */
function inside(root: string, path: string): string | null {
  try {
    const top = realpathSync(root);
    const full = resolve(top, path);
    const within = relative(top, full);
    if (within === '' || within.startsWith(`..${sep}`) || within === '..' || resolve(within) === within)
      return null;
    return realpathSync(full) === full ? full : null;
  } catch {
    return null;
  }
}
