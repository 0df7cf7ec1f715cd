import { renderText } from '../../diagnostics/render-text.ts';
import { collector } from '../../diagnostics/report.ts';
import { didYouMean, nearest } from '../../diagnostics/suggest.ts';
import { guideJson } from '../../pages/guide/guide-json.ts';
import { visitInText } from '../../pages/guide/visit-text.ts';
import { fileId } from '../../shop/discover.ts';
import { diskFiles } from '../../shop/files/disk-files.ts';
import { sourcesOf } from '../../shop/files/sources-of.ts';
import { inspectVisit, planned } from '../../shop/inspect/inspect-visit.ts';
import { openWorkspace, type Workspace } from '../../shop/open-workspace.ts';
import { schemaPath } from '../../site/guides/guide-files.ts';
import { guideId } from '../../site/site-pages.ts';
import { sourceFile } from '../../source/source-file.ts';
import type { Written } from '../../source/span.ts';
import type { VisitRequest } from '../../visit/index.ts';
import { type ExitCode, type Io, UsageError } from '../io.ts';
import { workspaceFolder } from '../workspace.ts';

interface VisitOptions {
  readonly guides: string;
  readonly build?: string;
  readonly format: 'text' | 'json';
}

/**
 * `baybook visit`: plans several guides on one vehicle as one job and prints it; one name may be that of a visit of the
 * workspace. Nothing is planned of guides that have errors.
 */
export async function visit(names: readonly string[], options: VisitOptions, io: Io): Promise<ExitCode> {
  const { root, prefix } = await workspaceFolder(options.guides, io);
  const files = diskFiles(root);
  const workspace = await openWorkspace(files, io.store);
  const [only] = names;
  const path = names.length === 1 ? workspace.found.visits.find((one) => fileId(one) === only) : undefined;
  const line = commandLine(names, options.build);
  const { value, findings } =
    path === undefined
      ? await fromLine(line, names, options.build, workspace)
      : await inspectVisit(path, workspace);
  const sources = new Map([...sourcesOf(findings, files), [line.path, line]]);
  const text = renderText(findings, { sources, prefix }, { colour: io.colour, width: io.width });
  if (text !== '') io.err(`${text}\n`);
  if (!value || findings.some(({ severity }) => severity === 'error')) {
    io.err('nothing was planned\n');
    return 1;
  }
  const { guide, job } = value;
  io.out(
    options.format === 'json'
      ? `${JSON.stringify(guideJson(guide, job, schemaPath), null, 1)}\n`
      : `${visitInText(guide, job)}\n`,
  );
  return 0;
}

/** What was typed, so that findings can point into it. */
function commandLine(names: readonly string[], build: string | undefined) {
  const said = build === undefined ? '' : ` --build "${build}"`;
  return sourceFile('visits/(command line)', `baybook visit ${names.join(' ')}${said}`);
}

async function fromLine(
  line: ReturnType<typeof commandLine>,
  names: readonly string[],
  build: string | undefined,
  workspace: Workspace,
) {
  const known = workspace.found.guides.map(guideId);
  const unknown = names.find((name) => !known.includes(name));
  if (unknown !== undefined) {
    const help = didYouMean(nearest(unknown, known)) || `there are ${known.join(', ')}`;
    throw new UsageError(`there is no guide "${unknown}"; ${help}`);
  }
  let from = 0;
  const placed = (value: string): Written<string> => {
    const start = line.text.indexOf(value, from);
    from = start + value.length;
    return { value, at: { file: line.path, start, end: from } };
  };
  const whole = { file: line.path, start: 0, end: line.text.length };
  placed('baybook visit');
  const guides = names.map(placed);
  const traits = (build ?? '')
    .split(',')
    .map((word) => word.trim())
    .filter((word) => word !== '');
  const request: VisitRequest = {
    id: names.join('-and-'),
    file: line.path,
    title: { value: `One visit: ${names.join(', ')}`, at: whole },
    platform: null,
    guides,
    build: traits.map(placed),
    note: [],
    at: whole,
  };
  const { findings, report } = collector();
  return { value: await planned(request, workspace, workspace, report), findings };
}
