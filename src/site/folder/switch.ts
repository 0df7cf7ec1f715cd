import { existsSync, lstatSync, readdirSync, readFileSync, realpathSync, type Stats } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import type { Disk } from './disk.ts';
import { isPathWithin, sealOf } from './own-files.ts';

/** Holds what is new, until it is switched in. */
export const stagingName = '.baybook-staging';

/** Says, once it stands, that the new site is decided on, and what is left to do for it. */
const decisionName = '.baybook-switch.json';

/** The way from one site to the next, by paths from the output folder. */
export interface Switch {
  /** Files that wait in the staging folder; pages last, so that what they show is there before them. */
  readonly put: readonly string[];
  readonly remove: readonly string[];
}

/**
 * Switches to the new site. Up to the moment at which the decision is put in place, in one step, the old site
 * stands whole; from then on whoever opens the folder next finishes what is left, which takes no room on the disk.
 */
export function switchOver(folder: string, change: Switch, disk: Disk): void {
  const aside = join(folder, stagingName, decisionName);
  disk.makeFolder(dirname(aside));
  const { put, remove } = change;
  for (const parent of new Set(put.map((path) => dirname(join(folder, path))))) disk.makeFolder(parent);
  disk.write(aside, JSON.stringify({ put, remove, seal: sealOf([put, remove]) }));
  disk.rename(aside, join(folder, decisionName));
  finish(folder, change, disk);
}

/**
 * Finishes a switch that was cut short after it was decided, and clears away what was never decided. What to know of
 * it, one sentence each.
 */
export function settle(folder: string, disk: Disk): readonly string[] {
  const path = join(folder, decisionName);
  const decided = readDecision(path);
  const isEdited = decided === null && existsSync(path);
  if (decided) finish(folder, decided, disk);
  else if (existsSync(join(folder, stagingName))) forsake(folder, disk);
  if (isEdited) disk.remove(path);
  return isEdited ? [editedWords] : [];
}

/** Clears away a site that was never decided on, and the folders that were made for it. */
function forsake(folder: string, disk: Disk): void {
  const staging = join(folder, stagingName);
  const isFolder = lstatSync(staging).isDirectory();
  const entries = isFolder ? readdirSync(staging, { recursive: true, withFileTypes: true }) : [];
  const inside = entries
    .filter((entry) => entry.isDirectory())
    .map((entry) => relative(staging, join(entry.parentPath, entry.name)));
  // What lies within a folder goes before it.
  for (const path of inside.sort().reverse()) {
    const made = join(folder, path);
    // A link on the way could lead out of the folder.
    const isOwn = existsSync(made) && realpathSync(made) === join(realpathSync(folder), path);
    if (isOwn && lstatSync(made).isDirectory() && readdirSync(made).length === 0) disk.removeFolder(made);
  }
  disk.remove(staging);
}

const editedWords = `${decisionName} in the output folder, which a build left that was cut short, is not as Baybook wrote it; nothing that it names was moved or removed`;

function finish(folder: string, { put, remove }: Switch, disk: Disk): void {
  const made = new Set<string>();
  for (const path of put) {
    const from = join(folder, stagingName, path);
    const to = join(folder, path);
    if (!existsSync(from)) continue;
    if (!made.has(dirname(to))) disk.makeFolder(dirname(to));
    made.add(dirname(to));
    disk.rename(from, to);
  }
  for (const path of remove) removeFile(folder, path, disk);
  disk.remove(join(folder, stagingName));
  disk.remove(join(folder, decisionName));
}

/** What was decided; `null` where nothing was, or somebody has edited it: what it names could be anybody's. */
function readDecision(path: string): Switch | null {
  try {
    const { put, remove, seal } = JSON.parse(readFileSync(path, 'utf8'));
    const isOwn = seal === sealOf([put, remove]);
    return isOwn && [put, remove].every((list) => Array.isArray(list) && list.every(isPathWithin))
      ? { put, remove }
      : null;
  } catch {
    return null;
  }
}

/** Removes a file that an earlier build wrote, and the folders that this leaves empty. */
function removeFile(folder: string, path: string, disk: Disk): void {
  if (isBlocked(folder, path)) return;
  disk.remove(join(folder, path));
  for (let parent = dirname(path); parent !== '.'; parent = dirname(parent)) {
    const full = join(folder, parent);
    // Gone already where this was cut short before.
    if (!existsSync(full)) continue;
    if (readdirSync(full).length > 0) return;
    disk.removeFolder(full);
  }
}

/** Whether something lies at a path, or on the way to it, that no file of a build can take the place of. */
export function isBlocked(folder: string, path: string, look: Look = lookUp): boolean {
  const parts = path.split('/');
  for (let depth = 1; depth <= parts.length; depth += 1) {
    const found = look(join(folder, ...parts.slice(0, depth)));
    if (!found) return false;
    // A link could lead out of the folder, into files that are not the site's.
    if (found.isSymbolicLink()) return true;
    if (depth < parts.length && !found.isDirectory()) return true;
    if (depth === parts.length && !found.isFile()) return true;
  }
  return false;
}

/** What stands at a path; `undefined` where there is nothing. */
type Look = (path: string) => Stats | undefined;

const lookUp: Look = (path) => lstatSync(path, { throwIfNoEntry: false });

/** Looks each path up once, for as long as nothing is changed. */
export function lookingOnce(): Look {
  const seen = new Map<string, Stats | undefined>();
  return (path) => {
    const found = seen.has(path) ? seen.get(path) : lookUp(path);
    seen.set(path, found);
    return found;
  };
}
