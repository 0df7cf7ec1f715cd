import type { Finding } from '../../src/diagnostics/finding.ts';
import { collector } from '../../src/diagnostics/report.ts';
import { readGuide } from '../../src/guide/index.ts';
import { computeJob } from '../../src/job/index.ts';
import { readText } from '../../src/shop/files/text-files.ts';
import type { WorkspaceFiles } from '../../src/shop/files/workspace-files.ts';
import { guideContext } from '../../src/shop/guide-context.ts';
import { inspectGuide } from '../../src/shop/inspect/inspect-guide.ts';
import { openWorkspace, type Workspace } from '../../src/shop/open-workspace.ts';
import { type PlannedVisit, planVisit, type VisitRequest } from '../../src/visit/index.ts';

/** Guides of a workspace, inspected, ready to be planned in any combination. */
export interface Bookable {
  readonly workspace: Workspace;
  /** Every finding of the guides. */
  readonly findings: readonly Finding[];
  readonly plan: (
    names: readonly string[],
    build?: readonly string[],
  ) => { readonly visit: PlannedVisit | null; readonly findings: readonly Finding[] };
  readonly guide: (name: string) => Visited;
}

type Visited = Parameters<typeof planVisit>[1][number];

/**
 * Reads some guides of a workspace.
 *
 * @param judged holds them against all rules too; what is published has passed these already
 */
export async function bookable(
  files: WorkspaceFiles,
  names: readonly string[],
  judged = true,
): Promise<Bookable> {
  const workspace = await openWorkspace(files);
  const found: Finding[] = [...workspace.general];
  const guides = new Map<string, Visited>();
  for (const name of names) {
    const path = `${name}/guide.md`;
    const { value, findings } = judged ? await inspectGuide(path, workspace) : readAlone(path, workspace);
    found.push(...findings);
    if (value) guides.set(name, value);
  }
  const guide = (name: string) => {
    const one = guides.get(name);
    if (!one) throw new Error(`the guide ${name} could not be read`);
    return one;
  };
  return {
    workspace,
    findings: found,
    guide,
    plan: (wanted, build = []) => {
      const { findings, report } = collector();
      const visit = planVisit(request(wanted, build), wanted.map(guide), workspace.shop, report);
      return { visit, findings };
    },
  };
}

function readAlone(path: string, { shop, procedures, files }: Workspace) {
  const { findings, report } = collector();
  const source = readText(files, path);
  const guide = source && readGuide(source, guideContext(shop, procedures, files), report);
  return { value: guide && { guide, job: computeJob(guide, shop.settings.crew) }, findings };
}

function request(names: readonly string[], build: readonly string[]): VisitRequest {
  const at = { file: 'visits/test.md', start: 0, end: 0 };
  const written = (value: string) => ({ value, at });
  return {
    id: 'test',
    file: at.file,
    title: written('Test'),
    platform: null,
    build: build.map(written),
    guides: names.map(written),
    note: [],
    at,
  };
}
