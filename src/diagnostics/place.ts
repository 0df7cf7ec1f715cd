import { type LineColumn, lineColumn, type Sources } from '../source/source-file.ts';
import type { Span } from '../source/span.ts';

/** A range in a text file as people and editors count it; `end` is the place after the last character. */
export interface Place {
  readonly start: LineColumn;
  readonly end: LineColumn;
}

/** The place of a span; `null` for a file as a whole, or one that has no text. */
export function placeOf(span: Span, sources: Sources): Place | null {
  const source = sources.get(span.file);
  if (!source || (span.start === 0 && span.end === 0)) return null;
  return { start: lineColumn(source, span.start), end: lineColumn(source, span.end) };
}

/** Where findings are printed: their sources, and the way from the reader's folder to the workspace. */
export interface RenderContext {
  readonly sources: Sources;
  /** Put before each file's path, with its closing slash; empty where the workspace is the current folder. */
  readonly prefix: string;
}
