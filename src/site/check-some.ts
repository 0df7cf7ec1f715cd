import { fileId } from '../shop/discover.ts';
import { visitAt } from '../shop/inspect/inspect-visit.ts';
import { conclude, type Verdict } from '../shop/inspect/verdict.ts';
import type { Checked } from './check-guides.ts';
import { readKept } from './guides/kept.ts';
import { runGuides } from './guides/run-guides.ts';
import { ownIdentity } from './identity.ts';
import { openWork } from './open-work.ts';
import { guideId } from './site-pages.ts';
import type { Work } from './work.ts';

/** What checking some guides has found, or the names that there are, where one that was named is not among them. */
type CheckedSome = Checked | { readonly unknown: string; readonly known: readonly string[] };

/**
 * Checks the guides that are named, and what they use; of a visit that is named, its guides too. What lies between
 * them and others is judged from what the store knows of those, if they are still as they were.
 *
 * @param names of guides and visits, or the paths of their files
 */
export async function checkSome(work: Work, names: readonly string[]): Promise<CheckedSome> {
  const { workspace, ground } = await openWork(work, ownIdentity(), false);
  const { guides: all, visits: allVisits } = workspace.found;
  const isNamed = (path: string) => namesOf(path).some((name) => names.includes(name));
  const unknown = names.find((name) => ![...all, ...allVisits].some((path) => namesOf(path).includes(name)));
  if (unknown !== undefined) return { unknown, known: [...all.map(guideId), ...allVisits.map(fileId)] };
  const visits = allVisits.filter(isNamed);
  const booked = new Set(
    visits.flatMap((path) =>
      (visitAt(path, workspace, workspace, ignored)?.guides ?? []).map(({ value }) => `${value}/guide.md`),
    ),
  );
  const named = all.filter((path) => isNamed(path) || booked.has(path));
  const { results: every, notices } = await runGuides([...named, ...visits], ground, work);
  const [results, ofVisits] = [every.slice(0, named.length), every.slice(named.length)];
  const others = all.filter((path) => !named.includes(path));
  // What is wrong with the others is not asked for.
  const known = others
    .flatMap((path) => readKept(path, ground) ?? [])
    .map((kept) => ({ ...kept, findings: [] }));
  const files = new Set(others);
  const verdict: Verdict = conclude(workspace, [...results, ...known], ofVisits);
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
    notices: [...notices, ...unjudged, ...every.flatMap(({ problems }) => problems)],
  };
}

/** What a file is called on the command line: a guide by its folder, a visit by its name; each by its path too. */
export function namesOf(path: string): readonly string[] {
  const isGuide = path.endsWith('/guide.md');
  return isGuide ? [guideId(path), path] : [fileId(path), path, path.replace(/\.md$/, '')];
}

/** What is wrong with a visit is told when it takes its turn. */
function ignored(): void {}
