import { openWorkspace, type Workspace } from '../shop/open-workspace.ts';
import { conclude, type Verdict } from '../shop/verdict.ts';
import { readFonts } from './fonts.ts';
import { runGuides } from './guides/run-guides.ts';
import { type TurnGround, turnGround } from './guides/turn.ts';
import { ownIdentity } from './identity.ts';
import { readKit } from './kit.ts';
import { sitePages } from './site-pages.ts';
import { basisOf, readRun, type Work, workspaceHash, writeRun } from './work.ts';

/** What checking all guides has found, and what whoever runs it should know, one sentence each. */
export interface Checked extends Verdict {
  readonly notices: readonly string[];
}

/** Checks every guide of a workspace; nothing is worked out that the store still knows. */
export async function checkGuides(work: Work): Promise<Checked> {
  const identity = ownIdentity();
  const state = await workspaceHash(work, identity);
  const kept = readRun(work.store, state, 'check');
  if (kept) return { ...kept, soundGuides: new Set(kept.soundGuides) };
  const { workspace, ground } = await openWork(work, identity, false);
  const { results, notices } = await runGuides(workspace.found.guides, ground, work);
  const verdict = conclude(workspace, results);
  const problems = results.flatMap((result) => result.problems);
  if (problems.length === 0 && (await workspaceHash(work, identity)) === state) {
    const plain = { ...verdict, soundGuides: [...verdict.soundGuides] };
    writeRun(work.store, state, 'check', { ...plain, site: null, notices: [] });
  }
  return { ...verdict, notices: [...notices, ...problems] };
}

/** A workspace that has been read, and the ground on which its guides take their turns. */
export interface OpenWork {
  readonly workspace: Workspace;
  readonly ground: TurnGround;
}

/**
 * Reads what the guides of a workspace share.
 *
 * @param make whether the guides make pages as well
 */
export async function openWork(work: Work, identity: string, make: boolean): Promise<OpenWork> {
  const { files, store } = work;
  const workspace = await openWorkspace(files, store, await readFonts());
  const basis = await basisOf(work, identity, workspace.shop.settings);
  const kit = make ? await readKit(files, workspace.shop.files.keys()) : null;
  const ground = turnGround({ workspace, store, basis, kit, pageOf: sitePages(workspace) });
  return { workspace, ground };
}
