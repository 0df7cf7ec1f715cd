import type { Verdict } from '../shop/inspect/verdict.ts';
import { ownIdentity } from './identity.ts';
import { readRun, type Work, workspaceHash, writeRun } from './work.ts';

/** What checking all guides has found, and what whoever runs it should know, one sentence each. */
export interface Checked extends Verdict {
  readonly notices: readonly string[];
}

/** Checks every guide of a workspace; nothing is worked out that the store still knows. */
export async function checkGuides(work: Work): Promise<Checked> {
  const identity = ownIdentity();
  const state = await workspaceHash(work, identity);
  const kept = readRun(work.store, state, 'check') ?? readRun(work.store, state, 'site');
  if (kept) return { ...kept, soundGuides: new Set(kept.soundGuides) };
  // Loaded only where there is something new: it brings nearly all of the program.
  const [{ openWork }, { runGuides }, { conclude }] = await Promise.all([
    import('./open-work.ts'),
    import('./guides/run-guides.ts'),
    import('../shop/inspect/verdict.ts'),
  ]);
  const { workspace, ground } = await openWork(work, identity, false);
  const { guides, visits } = workspace.found;
  const { results, notices } = await runGuides([...guides, ...visits], ground, work);
  const verdict = conclude(workspace, results.slice(0, guides.length), results.slice(guides.length));
  const problems = results.flatMap((result) => result.problems);
  if (problems.length === 0 && (await workspaceHash(work, identity)) === state) {
    const plain = { ...verdict, soundGuides: [...verdict.soundGuides] };
    writeRun(work.store, state, 'check', { ...plain, site: null, notices: [] });
  }
  return { ...verdict, notices: [...notices, ...problems] };
}
