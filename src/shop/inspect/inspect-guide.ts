import { rulesFor } from '../../checks/index.ts';
import type { Finding } from '../../diagnostics/finding.ts';
import { collector } from '../../diagnostics/report.ts';
import { causesOnce } from '../../diagnostics/told-once.ts';
import { placeChains, placedReport, readGuide } from '../../guide/index.ts';
import { computeJob } from '../../job/index.ts';
import type { Guide } from '../../model/guide.ts';
import type { Job } from '../../model/job.ts';
import type { Release } from '../../release/history.ts';
import type { SourceFile } from '../../source/source-file.ts';
import type { WatchedWorkspace } from '../asks.ts';
import { guideContext } from '../guide-context.ts';
import type { Workspace } from '../open-workspace.ts';
import { readSource } from '../read-sources.ts';
import { releasesOf } from '../releases.ts';
import { echoesOfPlatform, withoutEchoes } from './echoes.ts';
import { checkPage } from './inspect-page.ts';
import { lostTo } from './lost.ts';

/** A guide that has been read, computed and held against all rules that look at it alone. */
export interface InspectedGuide {
  /** Path of its file. */
  readonly path: string;
  /** The guide with its job; `null` after a fault that leaves nothing to judge. */
  readonly value: {
    readonly guide: Guide;
    readonly job: Job;
    /** What was released of it, oldest first. */
    readonly releases: readonly Release[];
  } | null;
  readonly findings: readonly Finding[];
}

/**
 * Takes one guide from its text to its findings and its job. It stands alone: what lies between guides is judged afterwards, from the facts of all.
 *
 * @param path of its file
 */
export async function inspectGuide(
  path: string,
  workspace: Workspace,
  { shop, procedures, files }: WatchedWorkspace = workspace,
): Promise<InspectedGuide> {
  const { findings, report } = collector();
  const source = readSource(files, path, workspace.listing.files.get(path) ?? 0, report);
  if (!source) return { path, value: null, findings };
  const guide = readGuide(source, guideContext(shop, procedures, files), report);
  if (!guide) return { path, value: null, findings };

  const read = [...findings];
  const lost = lostTo(guide, read, sourcesOf(source, workspace));
  const job = computeJob(guide, shop.settings.crew, lost.gap);
  const placed = placedReport(placeChains(guide), report);
  const subject = { guide, job, shop, lost };
  for (const rule of rulesFor(lost, guide)) rule.run(subject, placed);
  workspace.judgeTemplates(guide, job, read, placed);
  await checkPage(guide, { shop, files, look: workspace.look }, placed, lost);
  const releases = releasesOf(path, { shop, files }, report);
  const known = shop.platforms.has(guide.platform.value);
  const told = causesOnce(withoutEchoes(findings, guide)).map((one) => withHalt(one, job));
  return {
    path,
    value: { guide, job, releases },
    findings: known ? told : told.filter(({ code }) => !echoesOfPlatform.has(code)),
  };
}

/** Says at what stopped the dry run that the rest was not checked. */
function withHalt(found: Finding, { halt }: Job): Finding {
  const { at, severity } = found;
  const stops =
    halt && severity === 'error' && at.file === halt.file && at.start >= halt.start && at.end <= halt.end;
  if (!stops) return found;
  const message =
    'from here on it is not known what is done, so that the dry run has judged only what comes before';
  return { ...found, notes: [...found.notes, { message }] };
}

/** The texts in which a finding of a guide can stand. */
function sourcesOf(source: SourceFile, { procedures }: Workspace): ReadonlyMap<string, SourceFile> {
  return new Map([source, ...procedures.values()].map((one) => [one.path, one]));
}
