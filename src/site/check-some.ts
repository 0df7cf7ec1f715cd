import { conclude, type Verdict } from '../shop/verdict.ts';
import type { Checked } from './check-guides.ts';
import { readKept } from './guides/kept.ts';
import { runGuides } from './guides/run-guides.ts';
import { ownIdentity } from './identity.ts';
import { openWork } from './open-work.ts';
import { guideId } from './site-pages.ts';
import type { Work } from './work.ts';

/** What checking some guides has found, or the ids that there are, where one that was named is not among them. */
type CheckedSome = Checked | { readonly unknown: string; readonly guides: readonly string[] };

/**
 * Checks the guides that are named, and what they use. What lies between them and others is judged from what the
 * store knows of those, if they are still as they were.
 *
 * @param ids of guides
 */
export async function checkSome(work: Work, ids: readonly string[]): Promise<CheckedSome> {
  const { workspace, ground } = await openWork(work, ownIdentity(), false);
  const all = workspace.found.guides;
  const unknown = ids.find((id) => !all.some((path) => guideId(path) === id));
  if (unknown !== undefined) return { unknown, guides: all.map(guideId) };
  const named = all.filter((path) => ids.includes(guideId(path)));
  const { results, notices } = await runGuides(named, ground, work);
  const others = all.filter((path) => !named.includes(path));
  // What is wrong with the others is not asked for.
  const known = others
    .flatMap((path) => readKept(path, ground) ?? [])
    .map((kept) => ({ ...kept, findings: [] }));
  const files = new Set(others);
  const verdict: Verdict = conclude(workspace, [...results, ...known]);
  const left = others.length - known.length;
  const unjudged =
    left === 0
      ? []
      : [
          `what lies between ${named.length === 1 ? 'it' : 'them'} and ${left} other ${left === 1 ? 'guide' : 'guides'} is not judged: check all of them once`,
        ];
  return {
    ...verdict,
    findings: verdict.findings.filter(({ at }) => !files.has(at.file)),
    templates: verdict.templates.filter(({ file }) => !files.has(file)),
    guideCount: named.length,
    notices: [...notices, ...unjudged, ...results.flatMap(({ problems }) => problems)],
  };
}
