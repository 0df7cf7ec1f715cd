import { type Lost, type Page, pageRules, platformAnchors, rulesFor } from '../checks/index.ts';
import type { Fonts } from '../cut/metrics.ts';
import type { Finding } from '../diagnostics/finding.ts';
import { collector, type Report } from '../diagnostics/report.ts';
import { type GuideContext, placeChains, placedReport, readGuide, readPlatform } from '../guide/index.ts';
import { computeJob } from '../job/index.ts';
import type { Guide } from '../model/guide.ts';
import type { Job } from '../model/job.ts';
import type { Platform, Shop } from '../model/shop.ts';
import { noCache, type PictureCache } from '../pictures/cache.ts';
import type { SourceFile, Sources } from '../source/source-file.ts';
import { discover, fileId } from './discover.ts';
import { echoesOfLists, echoesOfPlatform, missingLists, withoutEchoes } from './echoes.ts';
import type { Inspection } from './inspection.ts';
import { lostTo, nothingLost } from './lost.ts';
import { type LookAtPictures, pictureJudge } from './pictures.ts';
import { reportUnused } from './procedures.ts';
import { readLists, type ShopLists } from './read-lists.ts';
import { readSources } from './read-sources.ts';
import { resolvePath } from './resolve-path.ts';
import { templateJudge } from './templates.ts';
import { brokenForAll, type Inspected, sorted, soundGuides } from './verdict.ts';
import type { WorkspaceFiles } from './workspace-files.ts';

/**
 * Reads a workspace, builds every guide, computes its job and holds it against all rules. What is wrong with
 * one guide costs no other. Throws only where the workspace itself cannot be listed.
 *
 * @param cache where derived pictures are kept for the build that follows
 * @param fonts of the sheets of cut templates; without them it is not judged whether a template can be printed
 */
export async function inspect(
  files: WorkspaceFiles,
  cache: PictureCache = noCache,
  fonts: Fonts | null = null,
): Promise<Inspection> {
  const general = collector();
  const listing = await files.list();
  const sources = await readSources(files, listing, general.report);
  const found = discover(listing.files.keys(), general.report);
  const lists = readLists(sources, listing.files, general.report);

  const platforms = readAll(found.platforms, sources, (source, report) =>
    readPlatform(source, guideContext(lists, new Map(), sources, found.procedures), report),
  );
  const byId = new Map(platforms.flatMap(({ value }) => (value ? [[value.id, value] as const] : [])));
  const context = guideContext(lists, byId, sources, found.procedures);
  const guides = readAll(found.guides, sources, (source, report) => readGuide(source, context, report));

  reportUnused(found.procedures, guides, general.report);

  const shop: Shop = { ...lists, platforms: byId, guides: guides.flatMap(({ value }) => value ?? []) };
  const look = pictureJudge(files, cache);
  const judgeTemplates = templateJudge(lists.settings, fonts);
  for (const { value, report } of platforms) {
    if (value) await checkPage(platformPage(value), shop, look, report, nothingLost);
  }
  const jobs = new Map<string, Job>();
  for (const { value, findings, report } of guides) {
    if (!value) continue;
    const read = [...findings];
    const subject = {
      guide: value,
      job: computeJob(value, shop.settings.crew),
      shop,
      lost: lostTo(value, read, sources),
    };
    const placed = placedReport(placeChains(value), report);
    for (const rule of rulesFor(subject.lost, value)) rule.run(subject, placed);
    judgeTemplates(value, subject.job, read, placed);
    await checkPage(value, shop, look, placed, subject.lost);
    jobs.set(value.id, subject.job);
  }
  const told = [general, ...platforms, ...guides.map((guide) => eachOnce(guide, byId))];
  const all = sorted(told.flatMap(({ findings }) => findings));
  const missing = missingLists(listing.files, all);
  const broken = brokenForAll(general.findings, lists.faults);
  const echoes = echoesOfLists([...broken, ...missing.map(({ at }) => at.file)]);
  return {
    shop,
    jobs,
    findings: sorted([...all.filter(({ code }) => !echoes.has(code)), ...missing]),
    sources,
    soundGuides: broken.length > 0 ? new Set() : soundGuides(guides, platforms, lists.faults),
    brokenForAll: broken,
    guideCount: found.guides.length,
  };
}

/** Reads files one by one, each with findings of its own, so that one bad file costs no other. */
function readAll<T>(
  paths: readonly string[],
  sources: Sources,
  read: (source: SourceFile, report: Report) => T | null,
): readonly Inspected<T>[] {
  return paths.flatMap((path) => {
    const source = sources.get(path);
    if (!source) return [];
    const { findings, report } = collector();
    return [{ value: read(source, report), findings, report }];
  });
}

/** Without what only repeats another fault of the guide, or that its platform is not there. */
function eachOnce<T extends Inspected<Guide>>(
  { value, findings }: T,
  platforms: ReadonlyMap<string, Platform>,
): { readonly findings: readonly Finding[] } {
  const known = !value || platforms.has(value.platform.value);
  const told = withoutEchoes(findings);
  return { findings: known ? told : told.filter(({ code }) => !echoesOfPlatform.has(code)) };
}

function guideContext(
  { crib, fastenerTypes }: ShopLists,
  platforms: ReadonlyMap<string, Platform>,
  sources: Sources,
  procedures: readonly string[],
): GuideContext {
  const sourceOf = (path: string): [string, SourceFile][] => {
    const source = sources.get(path);
    return source ? [[fileId(path), source]] : [];
  };
  return {
    crib,
    fastenerTypes,
    platforms,
    procedures: new Map(procedures.flatMap(sourceOf)),
    resolve: resolvePath,
    textOf: (path) => sources.get(path)?.text ?? null,
  };
}

async function checkPage(
  page: Page,
  shop: Shop,
  look: LookAtPictures,
  report: Report,
  lost: Lost,
): Promise<void> {
  for (const rule of pageRules) rule.runOnPage(page, shop, report, lost);
  await look(page.file, page.pictures, report);
}

function platformPage(platform: Platform): Page {
  return { ...platform, anchors: platformAnchors(platform) };
}
