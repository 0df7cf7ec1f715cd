import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { conclude, type Verdict } from '../shop/inspect/verdict.ts';
import { folderStore, type Store } from '../store/store.ts';
import { runGuides } from './guides/run-guides.ts';
import { ownIdentity } from './identity.ts';
import { openWork } from './open-work.ts';
import { type Work, workspaceHash } from './work.ts';

/** A part of the guides of a build: the second of four is `{ part: 2, of: 4 }`. */
export interface ShardPart {
  readonly part: number;
  readonly of: number;
}

/** What a shard says of itself, beside the work that it holds. */
interface ShardNote extends ShardPart {
  readonly format: 1;
  /** Differs where anything of the workspace does, or the Baybook that worked on it; `null` until it is finished. */
  readonly state: string | null;
}

const noteName = 'shard.json';

/** The store of a shard in a folder, which holds nothing else; else why it cannot be one, in a sentence. */
export function openShard(
  folder: string,
  { part, of }: ShardPart,
  now: Date,
): Store | { readonly problem: string } {
  mkdirSync(folder, { recursive: true });
  const names = readdirSync(folder);
  if (names.length > 0 && !names.includes(noteName)) {
    return { problem: `"${basename(folder)}" holds other things; a shard needs a folder of its own` };
  }
  writeNote(folder, { format: 1, part, of, state: null });
  return folderStore(folder, now);
}

/**
 * Works out what some of the guides and visits give, every so many-th of them, and keeps it in the shard's folder. The verdict
 * is on these guides and on what all of them share; what lies between guides is judged when the shards are merged.
 */
export async function fillShard(
  folder: string,
  work: Work,
  { part, of }: ShardPart,
): Promise<{ readonly verdict: Verdict; readonly notices: readonly string[] }> {
  const identity = ownIdentity();
  const state = await workspaceHash(work, identity);
  const { workspace, ground } = await openWork(work, identity, true);
  const { guides, visits } = workspace.found;
  const own = [...guides, ...visits].filter((_, index) => index % of === part - 1);
  const { results, notices } = await runGuides(own, ground, work);
  const isVisit = ({ path }: { readonly path: string }) => visits.includes(path);
  const ofGuides = results.filter((one) => !isVisit(one));
  const verdict = { ...conclude(workspace, ofGuides, results.filter(isVisit)), guideCount: ofGuides.length };
  const problems = results.flatMap((result) => result.problems);
  const isWhole = problems.length === 0 && (await workspaceHash(work, identity)) === state;
  if (isWhole) writeNote(folder, { format: 1, part, of, state });
  return { verdict, notices: [...notices, ...problems] };
}

/**
 * A store that also knows the work of shards: those of one build of this very workspace, each once and none
 * missing. Else why they are not, in a sentence.
 */
export async function mergedStore(
  folders: readonly string[],
  work: Work,
  now: Date,
): Promise<Store | { readonly problem: string }> {
  const state = await workspaceHash(work, ownIdentity());
  const notes: ShardNote[] = [];
  for (const folder of folders) {
    const note = readNote(folder);
    if (!note) return { problem: `"${basename(folder)}" is no shard of this Baybook` };
    if (note.state === null) return { problem: `"${basename(folder)}" was not finished; make it again` };
    if (note.state !== state) {
      return {
        problem: `"${basename(folder)}" was made from other files, or by another Baybook or Node, than are here; make it again`,
      };
    }
    notes.push(note);
  }
  const problem = whyNotWhole(notes, folders);
  if (problem !== null) return { problem };
  return withWorkIn(folders, work.store, now);
}

/**
 * A store that also knows what shards hold, of whatever workspace they were made: the work on a guide counts where
 * all that it has asked for is the same, and anything else in them is of no use and does no harm. Else why a folder
 * is no shard, in a sentence.
 */
export function reusingStore(
  folders: readonly string[],
  store: Store,
  now: Date,
): Store | { readonly problem: string } {
  const other = folders.find((folder) => !readNote(folder));
  if (other !== undefined) return { problem: `"${basename(other)}" is no shard of this Baybook` };
  return withWorkIn(folders, store, now);
}

function withWorkIn(folders: readonly string[], own: Store, now: Date): Store {
  const stores = [own, ...folders.map((folder) => folderStore(folder, now))];
  return {
    ...own,
    read: (name) => {
      for (const store of stores) {
        const bytes = store.read(name);
        if (bytes) return bytes;
      }
      return null;
    },
  };
}

function whyNotWhole(notes: readonly ShardNote[], folders: readonly string[]): string | null {
  const names = folders.map((folder) => `"${basename(folder)}"`);
  const of = notes[0]?.of ?? 0;
  for (const [index, note] of notes.entries()) {
    if (note.of !== of) return `${names[0]} is one of ${of} parts, and ${names[index]} one of ${note.of}`;
    const before = notes.findIndex(({ part }) => part === note.part);
    if (before < index)
      return `${names[before]} and ${names[index]} are the same part, ${note.part} of ${of}`;
  }
  const lost = Array.from({ length: of }, (_, index) => index + 1).filter(
    (part) => !notes.some((note) => note.part === part),
  );
  if (lost.length === 0) return null;
  return `of ${of} parts, ${lost.join(', ')} ${lost.length === 1 ? 'is' : 'are'} missing`;
}

function writeNote(folder: string, note: ShardNote): void {
  writeFileSync(join(folder, noteName), `${JSON.stringify(note)}\n`);
}

function readNote(folder: string): ShardNote | null {
  try {
    const note: Partial<ShardNote> = JSON.parse(readFileSync(join(folder, noteName), 'utf8'));
    const { format, part, of, state } = note;
    const isNote = format === 1 && Number.isInteger(part) && Number.isInteger(of) && state !== undefined;
    return isNote ? (note as ShardNote) : null;
  } catch {
    return null;
  }
}
