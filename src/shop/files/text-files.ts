import { decodeSource, type SourceFile } from '../../source/source-file.ts';
import type { WorkspaceFiles } from './workspace-files.ts';

/** Bytes; a text file above it is something else under the wrong name. */
export const largestText = 4_000_000;

/** The text of a file that a guide refers to, such as a maker's outline; `null` where there is none. */
export function readText(files: Pick<WorkspaceFiles, 'read'>, path: string): SourceFile | null {
  const bytes = files.read(path);
  return bytes === null || bytes.length > largestText ? null : decodeText(path, bytes);
}

/** Bytes as text; `null` where they are none. */
export function decodeText(path: string, bytes: Uint8Array): SourceFile | null {
  const source = decodeSource(path, bytes);
  return source?.text.includes('\u0000') ? null : source;
}
