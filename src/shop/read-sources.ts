import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import { decodeSource, type SourceFile } from '../source/source-file.ts';
import { wholeFile } from '../source/span.ts';
import { fileEmpty, fileNotUtf8, fileTooLarge, fileUnreadable, linkRefused } from './rules.ts';
import type { Listing, WorkspaceFiles } from './workspace-files.ts';

/** Bytes; a text file above it is something else under the wrong name. */
const largestText = 4_000_000;

const textEndings = ['.md', '.yaml', '.svg', '.dxf'];

/** The files that Baybook itself reads; only of these is it a fault to be empty. */
const readEndings = ['.md', '.yaml'];

/** Reads every text file of a workspace, in the order of their paths, and reports those that are no text. */
export async function readSources(
  files: WorkspaceFiles,
  listing: Listing,
  report: Report,
): Promise<ReadonlyMap<string, SourceFile>> {
  for (const path of listing.links)
    report(finding(linkRefused, wholeFile(path), 'this is a symbolic link, which is not followed'));
  const sources = new Map<string, SourceFile>();
  for (const [path, size] of listing.files) {
    if (!endsWith(path, textEndings)) continue;
    const source = await readSource(files, path, size, report);
    if (source) sources.set(path, source);
  }
  return sources;
}

async function readSource(
  files: WorkspaceFiles,
  path: string,
  size: number,
  report: Report,
): Promise<SourceFile | null> {
  const own = endsWith(path, readEndings);
  const at = wholeFile(path);
  if (size > largestText) {
    if (own)
      report(finding(fileTooLarge, at, `this file has ${Math.round(size / 1e6)} MB; text has at most 4`));
    return null;
  }
  const bytes = await files.read(path);
  if (bytes === null) {
    report(finding(fileUnreadable, at, 'this file cannot be opened'));
    return null;
  }
  const source = decodeSource(path, bytes);
  if (source === null || source.text.includes('\u0000')) {
    if (own) report(finding(fileNotUtf8, at, 'this file is not UTF-8 text; save it as UTF-8'));
    return null;
  }
  if (own && source.text.trim() === '') {
    report(finding(fileEmpty, at, 'this file is empty'));
    return null;
  }
  return source;
}

function endsWith(path: string, endings: readonly string[]): boolean {
  return endings.some((ending) => path.toLowerCase().endsWith(ending));
}
