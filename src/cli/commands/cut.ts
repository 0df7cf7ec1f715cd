import { mkdir, writeFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { type DrawnSide, type DrawnTemplate, drawTemplate } from '../../cut/draw-template.ts';
import type { CutContext } from '../../cut/job.ts';
import { renderText } from '../../diagnostics/render-text.ts';
import { didYouMean, nearest } from '../../diagnostics/suggest.ts';
import { templateVariants } from '../../job/index.ts';
import type { CutTemplate } from '../../model/cut-template.ts';
import { releaseStanding } from '../../release/standing.ts';
import { diskFiles } from '../../shop/files/disk-files.ts';
import { sourcesOf } from '../../shop/files/sources-of.ts';
import type { WorkspaceFiles } from '../../shop/files/workspace-files.ts';
import { checked } from '../../shop/inspect/inspect.ts';
import { inspectGuide } from '../../shop/inspect/inspect-guide.ts';
import { conclude } from '../../shop/inspect/verdict.ts';
import { openWorkspace } from '../../shop/open-workspace.ts';
import { readFonts } from '../../site/fonts.ts';
import { sheetIdentity, sheetWords } from '../../site/guides/cut-files.ts';
import type { PublishedGuide } from '../../site/publication.ts';
import { readMeasured, readPapers } from '../cut-options.ts';
import { guidePath } from '../guide-path.ts';
import { type ExitCode, type Io, UsageError } from '../io.ts';
import { printVerdict } from '../output.ts';
import { outputFolder, type WorkspaceFolder, workspaceFolder } from '../workspace.ts';

interface CutOptions {
  readonly guides: string;
  readonly out: string;
  readonly paper?: string;
  readonly measured?: string;
}

/**
 * `baybook cut`: writes the cut templates of one guide, or one of them, without the site; with the two sides
 * that a printer made of the proof square, as sheets that come out true on that printer. Nothing is written
 * of a guide that has errors.
 */
export async function cut(
  id: string,
  templateId: string | undefined,
  options: CutOptions,
  io: Io,
): Promise<ExitCode> {
  const papers = options.paper === undefined ? null : readPapers(options.paper);
  const correction = options.measured === undefined ? undefined : readMeasured(options.measured);
  const workspace = await workspaceFolder(options.guides, io);
  const folder = join(outputFolder(options.out, workspace, io), id);
  const fonts = await readFonts();
  const files = diskFiles(workspace.root);
  const opened = await openWorkspace(files, io.store, fonts);
  const inspected = await inspectGuide(guidePath(id, opened), opened);
  const verdict = conclude(opened, [checked(inspected)]);
  const { value } = inspected;
  if (value === null || !verdict.soundGuides.has(id)) {
    const closing = `nothing was written: a saw is not to follow "${id}" while it has errors\n`;
    const asText = { guides: options.guides, format: 'text' } as const;
    await printVerdict(verdict, files, asText, workspace.prefix, closing, io);
    return 1;
  }
  const published = { ...value, standing: releaseStanding(value.guide, value.job, value.releases) };
  const context: CutContext = {
    ...sheetIdentity(published, opened.shop.settings),
    papers: papers ?? opened.shop.settings.papers,
    fonts,
    side: null,
    ...(correction && { correction }),
  };
  const drawn: DrawnTemplate[] = [];
  for (const template of chosen(published, templateId)) {
    for (const variant of templateVariants(template, published.guide, published.job))
      drawn.push(await drawTemplate(variant.template, context));
  }
  if (reportFaults(drawn, files, workspace, io)) return 1;

  const sides = drawn.flatMap((one) => one.sides);
  await writeSides(sides, folder, context);
  io.out(`${relative(io.cwd, folder) || '.'}:\n${sides.map((side) => linesOf(side, context)).join('')}`);
  io.out(closingWords(context));
  return 0;
}

/** The template that is named, or all of them. */
function chosen({ guide }: PublishedGuide, id: string | undefined): readonly CutTemplate[] {
  const all = [...guide.templates.values()];
  if (all.length === 0) throw new UsageError(`the guide "${guide.id}" has no cut template`);
  if (id === undefined) return all;
  const template = guide.templates.get(id);
  if (template) return [template];
  const help =
    didYouMean(nearest(id, guide.templates.keys())) || `it has ${all.map((one) => one.id).join(', ')}`;
  throw new UsageError(`the guide "${guide.id}" has no cut template "${id}"; ${help}`);
}

/** A paper that the shop does not print on by itself is judged only here. */
function reportFaults(
  drawn: readonly DrawnTemplate[],
  files: WorkspaceFiles,
  { prefix }: WorkspaceFolder,
  io: Io,
): boolean {
  const faults = drawn.flatMap(({ findings }) => findings.filter(({ severity }) => severity === 'error'));
  if (faults.length === 0) return false;
  const text = renderText(
    faults,
    { sources: sourcesOf(faults, files), prefix },
    { colour: io.colour, width: io.width },
  );
  io.out(`${text}\n\nnothing was written\n`);
  return true;
}

/** What is written of a side: all of it, or, for one printer, its sheets alone. */
function filesOf({ files }: DrawnSide, { correction }: CutContext): DrawnSide['files'] {
  return correction ? files.filter(({ format }) => format === 'pdf') : files;
}

async function writeSides(sides: readonly DrawnSide[], folder: string, context: CutContext): Promise<void> {
  await mkdir(folder, { recursive: true });
  for (const { name, bytes } of sides.flatMap((side) => filesOf(side, context))) {
    await writeFile(join(folder, name), bytes);
  }
}

function linesOf(side: DrawnSide, context: CutContext): string {
  return filesOf(side, context)
    .map(({ name, plan }) => `  ${name}${plan ? `, ${sheetWords(plan).detail}` : ''}\n`)
    .join('');
}

function closingWords({ correction }: CutContext): string {
  if (!correction) return 'Print at 100 %, with no fitting, and measure the proof square before you cut.\n';
  const [x, y] = [correction.x, correction.y].map((factor) => factor.toFixed(4));
  return [
    `Corrected for one printer: across × ${x}, up × ${y}; every sheet says so.`,
    'Print on that printer with the same settings, and measure the proof square again before you cut.\n',
  ].join('\n');
}
