import { posix } from 'node:path';
import { collector, type Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import { readReleaseEntries, recordsFolder, releasesFile } from '../release/entries.ts';
import { type Release, readHistory } from '../release/history.ts';
import { releaseEntryMissing, releaseGuideMissing } from '../release/rules.ts';
import type { Sources } from '../source/source-file.ts';
import { wholeFile } from '../source/span.ts';
import type { WatchedWorkspace } from './asks.ts';
import { readText } from './files/text-files.ts';
import { readSource } from './read-sources.ts';

/** What was released of a guide, oldest first; empty where nothing was. */
export function releasesOf(
  guide: string,
  { shop, files }: Pick<WatchedWorkspace, 'shop' | 'files'>,
  report: Report,
): readonly Release[] {
  const folder = `${posix.dirname(guide)}/`;
  const path = folder + releasesFile;
  const size = shop.files.get(path);
  if (size === undefined) return [];
  const source = readSource(files, path, size, report);
  return source ? readHistory(source, folder, (file) => readText(files, file), report) : [];
}

/** Reports what was released of guides that are not there, and records that no release names. */
export function reportStrayReleases(
  listed: Iterable<string>,
  guides: readonly string[],
  sources: Sources,
  report: Report,
): void {
  const paths = [...listed];
  const folders = new Set(guides.map((path) => posix.dirname(path)));
  for (const path of paths) {
    const [folder = '', name, ...deeper] = path.split('/');
    const isList = name === releasesFile && deeper.length === 0;
    const isRecord = `${name}/` === recordsFolder && deeper.length === 1 && path.endsWith('.json');
    if (!isList && !isRecord) continue;
    if (!folders.has(folder)) {
      const told = isList || !paths.includes(`${folder}/${releasesFile}`);
      const message = `there is no ${folder}/guide.md, of which this was released`;
      if (told) report(finding(releaseGuideMissing, wholeFile(path), message));
    } else if (isRecord && !named(folder, posix.basename(path, '.json'), sources)) {
      const message = `${folder}/${releasesFile} has no entry for revision ${posix.basename(path, '.json')}`;
      report(finding(releaseEntryMissing, wholeFile(path), message));
    }
  }
}

/** Whether a `releases.yaml` names a revision; one that cannot be read has findings of its own. */
function named(folder: string, revision: string, sources: Sources): boolean {
  const source = sources.get(`${folder}/${releasesFile}`);
  if (!source) return false;
  const entries = readReleaseEntries(source, collector().report);
  return entries === null || entries.some((entry) => entry.revision === revision);
}
