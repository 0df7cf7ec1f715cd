/**
 * A place in a file of the workspace: the half-open range `[start, end)` of UTF-16 offsets into the file's
 * text, as {@link SourceFile} holds it (byte-order mark removed). Line and column are worked out only when a
 * place is printed. A file that has no text (a picture, a missing file) is pointed at with `start = end = 0`.
 */
export interface Span {
  /** Path from the workspace's root, with forward slashes. */
  readonly file: string;
  readonly start: number;
  readonly end: number;
}

/** A value together with the place where the author wrote it. */
export interface Written<T> {
  readonly value: T;
  readonly at: Span;
}

/** The place that stands for a file as a whole. */
export function wholeFile(file: string): Span {
  return { file, start: 0, end: 0 };
}

/** Orders places by file, then start, then end. */
export function compareSpans(a: Span, b: Span): number {
  if (a.file !== b.file) return a.file < b.file ? -1 : 1;
  return a.start - b.start || a.end - b.end;
}
