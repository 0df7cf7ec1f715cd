import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import type { SourceFile } from '../source/source-file.ts';
import { wholeFile } from '../source/span.ts';
import { decodeText, largestText } from './files/text-files.ts';
import type { WorkspaceFiles } from './files/workspace-files.ts';
import { reportMarkedPlaces } from './marked-places.ts';
import { fileEmpty, fileNotUtf8, fileTooLarge, fileUnreadable } from './rules.ts';

/** Whether a file is one of those that Baybook itself reads: only of these is it a fault to be empty. */
export function isOwnText(path: string): boolean {
  return /\.(?:md|yaml)$/i.test(path);
}

/** The page of the handbook about a file. */
function explained(path: string): string {
  if (path.endsWith('.yaml')) return path.slice(path.lastIndexOf('/') + 1);
  const page = { platforms: 'platform.md', procedures: 'procedure.md', visits: 'visit.md' };
  return page[path.split('/')[0] as keyof typeof page] ?? 'guide.md';
}

/** Reads a text file that Baybook goes by, and reports why it cannot be read. */
export function readSource(
  files: Pick<WorkspaceFiles, 'read'>,
  path: string,
  size: number,
  report: Report,
): SourceFile | null {
  const at = wholeFile(path);
  if (size > largestText) {
    report(finding(fileTooLarge, at, `this file has ${Math.round(size / 1e6)} MB; text has at most 4`));
    return null;
  }
  const bytes = files.read(path);
  if (bytes === null) {
    report(finding(fileUnreadable, at, 'this file cannot be opened'));
    return null;
  }
  const source = decodeText(path, bytes);
  if (source === null) {
    report(finding(fileNotUtf8, at, 'this file is not UTF-8 text; save it as UTF-8'));
    return null;
  }
  if (source.text.trim() === '') {
    report(
      finding(
        fileEmpty,
        at,
        `this file is empty; "baybook explain ${explained(path)}" tells what stands in one`,
      ),
    );
    return null;
  }
  reportMarkedPlaces(source, report);
  return source;
}
