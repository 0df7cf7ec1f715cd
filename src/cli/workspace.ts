import { realpathSync } from 'node:fs';
import { stat } from 'node:fs/promises';
import { basename, dirname, join, relative, resolve, sep } from 'node:path';
import { type Io, UsageError } from './io.ts';

/** A workspace as named on the command line. */
export interface WorkspaceFolder {
  readonly root: string;
  /** The way to it from the current folder, as put before each file in a finding. */
  readonly prefix: string;
}

/** Finds the workspace's folder; a wrong name is wrong usage. */
export async function workspaceFolder(named: string, io: Io): Promise<WorkspaceFolder> {
  const root = resolve(io.cwd, named);
  const found = await stat(root).catch(() => null);
  if (!found?.isDirectory()) {
    throw new UsageError(
      `there is no folder "${named}" here; --guides names the workspace, and "baybook new workspace" begins one`,
    );
  }
  const way = relative(io.cwd, root).split(sep).join('/');
  return { root, prefix: way === '' ? '' : `${way}/` };
}

/** Where the site goes. Never into the workspace, nor around it: the next run would read it, or replace it. */
export function outputFolder(named: string, workspace: WorkspaceFolder, io: Io): string {
  const out = resolve(io.cwd, named);
  const [real, root] = [realPath(out), realPath(workspace.root)];
  if (holds(root, real) || holds(real, root)) {
    throw new UsageError(`--out "${named}" and the workspace lie inside one another; choose another folder`);
  }
  return out;
}

/** Where a path leads to once every link on the way is followed; what is not there yet is taken as named. */
function realPath(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    const folder = dirname(path);
    return folder === path ? path : join(realPath(folder), basename(path));
  }
}

function holds(outer: string, inner: string): boolean {
  return outer === inner || inner.startsWith(outer.endsWith(sep) ? outer : outer + sep);
}
