import { guideFacts } from '../../checks/index.ts';
import type { Fonts } from '../../cut/drawing/metrics.ts';

import { noStore, type Store } from '../../store/store.ts';
import { sourcesOf } from '../files/sources-of.ts';
import type { WorkspaceFiles } from '../files/workspace-files.ts';
import { openWorkspace } from '../open-workspace.ts';
import { type InspectedGuide, inspectGuide } from './inspect-guide.ts';
import { type InspectedVisit, inspectVisit } from './inspect-visit.ts';
import type { Inspection } from './inspection.ts';
import { type CheckedGuide, conclude } from './verdict.ts';

/**
 * Reads a workspace, builds every guide, computes its job and holds it against all rules, and keeps all of it.
 * What is wrong with one guide costs no other. Throws only where the workspace itself cannot be listed.
 *
 * @param store where derived pictures are kept for the build that follows
 * @param fonts of the sheets of cut templates; without them it is not judged whether a template can be printed
 */
export async function inspect(
  files: WorkspaceFiles,
  store: Store = noStore,
  fonts: Fonts | null = null,
): Promise<Inspection> {
  const workspace = await openWorkspace(files, store, fonts);
  const guides: InspectedGuide[] = [];
  for (const path of workspace.found.guides) guides.push(await inspectGuide(path, workspace));
  const visits: InspectedVisit[] = [];
  for (const path of workspace.found.visits) visits.push(await inspectVisit(path, workspace));
  const verdict = conclude(workspace, guides.map(checked), visits);
  return {
    ...verdict,
    shop: workspace.shop,
    guides: guides.flatMap(({ value }) => value ?? []),
    visits: visits.flatMap(({ value }) => value ?? []),
    sources: sourcesOf(verdict.findings, files),
  };
}

/** What is kept of an inspected guide to judge it with the others. */
export function checked({ path, value, findings }: InspectedGuide): CheckedGuide {
  return { path, facts: value && guideFacts(value.guide), findings };
}
