import type { Finding } from '../../diagnostics/finding.ts';
import { collector, type Report } from '../../diagnostics/report.ts';
import {
  judgeRequest,
  ledgerErrors,
  type NamedGuide,
  planVisit,
  readVisit,
  reportConflicts,
  reportLookAlikes,
  type VisitRequest,
} from '../../visit/index.ts';
import type { WatchedWorkspace } from '../asks.ts';
import { guideContext } from '../guide-context.ts';
import type { Workspace } from '../open-workspace.ts';
import { readSource } from '../read-sources.ts';
import { type InspectedGuide, inspectGuide } from './inspect-guide.ts';

/** A visit that has been read and planned, and all that was found. */
export interface InspectedVisit {
  /** Path of its file. */
  readonly path: string;
  /** Planned as a guide like any other; `null` after a fault that leaves nothing to do. */
  readonly value: InspectedGuide['value'];
  readonly findings: readonly Finding[];
}

/** Takes one visit from its text to its plan; its guides are read and judged with it. */
export async function inspectVisit(
  path: string,
  workspace: Workspace,
  seen: WatchedWorkspace = workspace,
): Promise<InspectedVisit> {
  const { findings, report } = collector();
  const request = visitAt(path, workspace, seen, report);
  const value = request && (await planned(request, workspace, seen, report));
  return { path, value, findings };
}

/** What the file of a visit asks for. */
export function visitAt(
  path: string,
  { listing }: Workspace,
  { shop, procedures, files }: WatchedWorkspace,
  report: Report,
): VisitRequest | null {
  const source = readSource(files, path, listing.files.get(path) ?? 0, report);
  return source && readVisit(source, guideContext(shop, procedures, files), report);
}

/** Plans what a visit asks for, and tells what lies between its guides; what is wrong with one of them is its own. */
export async function planned(
  request: VisitRequest,
  workspace: Workspace,
  seen: WatchedWorkspace,
  report: Report,
): Promise<InspectedVisit['value']> {
  const named = new Map<string, NamedGuide>();
  const known: Finding[] = [];
  for (const { value: id } of request.guides) {
    const path = `${id}/guide.md`;
    if (named.has(id)) continue;
    if (!workspace.found.guides.includes(path)) {
      // Once it is there, the visit is to be planned anew.
      seen.files.read(path);
      continue;
    }
    const { value, findings } = await inspectGuide(path, workspace, seen);
    known.push(...findings);
    const isSound = value && findings.every(({ severity }) => severity !== 'error');
    named.set(id, isSound ? value : 'faulty');
  }
  const guides = judgeRequest(request, named, () => guideIds(seen), report);
  if (!guides) return null;
  reportLookAlikes(
    guides.map(({ guide }) => guide),
    report,
  );
  const plan = planVisit(request, guides, seen.shop, report);
  if (!plan) return null;
  const { findings, report: tell } = collector();
  for (const one of ledgerErrors(plan.guide, plan.job, seen.shop)) tell(one);
  reportConflicts(plan.guide, plan.job, seen.shop, tell);
  workspace.judgeTemplates(plan.guide, plan.job, [], tell);
  const [at = request.at] = request.guides.map((one) => one.at);
  for (const one of findings) {
    if (known.some(({ code, at: place }) => code === one.code && isSamePlace(place, one.at))) continue;
    report({
      ...one,
      notes: [...one.notes, { message: 'in this visit, where both are done on one vehicle', at }],
    });
  }
  // A visit is released by nobody: its guides are.
  return { ...plan, releases: [] };
}

function isSamePlace(a: Finding['at'], b: Finding['at']): boolean {
  return a.file === b.file && a.start === b.start;
}

function guideIds({ shop }: WatchedWorkspace): readonly string[] {
  return [...shop.files.keys()].flatMap((path) => /^([^/]+)\/guide\.md$/.exec(path)?.[1] ?? []);
}
