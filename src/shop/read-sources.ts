import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import { decodeSource, type SourceFile } from '../source/source-file.ts';
import { wholeFile } from '../source/span.ts';
import { fileEmpty, fileNotUtf8, fileTooLarge, fileUnreadable } from './rules.ts';
import type { WorkspaceFiles } from './workspace-files.ts';

/** Bytes; a text file above it is something else under the wrong name. */
const largestText = 4_000_000;

/** Whether a file is one of those that Baybook itself reads: only of these is it a fault to be empty. */
export function isOwnText(path: string): boolean {
  return /\.(?:md|yaml)$/i.test(path);
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
    report(finding(fileEmpty, at, 'this file is empty'));
    return null;
  }
  return source;
}

/** The text of a file that a guide refers to, such as a maker's outline; `null` where there is none. */
export function readText(files: Pick<WorkspaceFiles, 'read'>, path: string): SourceFile | null {
  const bytes = files.read(path);
  return bytes === null || bytes.length > largestText ? null : decodeText(path, bytes);
}

function decodeText(path: string, bytes: Uint8Array): SourceFile | null {
  const source = decodeSource(path, bytes);
  return source?.text.includes('\u0000') ? null : source;
}
