/** The text of one file of the workspace, with the offsets at which its lines begin. */
export interface SourceFile {
  /** Path from the workspace's root, with forward slashes. */
  readonly path: string;
  /** The text without a byte-order mark; line endings are kept as the author's editor wrote them. */
  readonly text: string;
  /** Offset of the first character of each line; the first entry is 0. */
  readonly lineStarts: readonly number[];
}

/** Every text file that a run has read, by path. */
export type Sources = ReadonlyMap<string, SourceFile>;

/** A place as people read it: both numbers count from 1, columns in UTF-16 units, a tab is one column. */
export interface LineColumn {
  readonly line: number;
  readonly column: number;
}

/** Decodes a file as UTF-8. Returns `null` where the bytes are not UTF-8. */
export function decodeSource(path: string, bytes: Uint8Array): SourceFile | null {
  try {
    return sourceFile(path, new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    return null;
  }
}

/** Indexes the lines of a text. A line ends after `\n`, `\r\n` or a lone `\r`. */
export function sourceFile(path: string, text: string): SourceFile {
  const lineStarts = [0];
  for (const ending of text.matchAll(/\r\n|\n|\r/g)) lineStarts.push(ending.index + ending[0].length);
  return { path, text, lineStarts };
}

/** Line and column of an offset; an offset past the end is taken as the end. */
export function lineColumn(source: SourceFile, offset: number): LineColumn {
  const place = Math.max(0, Math.min(offset, source.text.length));
  let low = 0;
  let high = source.lineStarts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((source.lineStarts[middle] ?? 0) <= place) low = middle;
    else high = middle - 1;
  }
  return { line: low + 1, column: place - (source.lineStarts[low] ?? 0) + 1 };
}

/** The text of a line, counted from 1, without its ending. */
export function lineText(source: SourceFile, line: number): string {
  const { lineStarts, text } = source;
  const start = lineStarts[line - 1] ?? text.length;
  let end = lineStarts[line] ?? text.length;
  // A line may be the whole file and be asked for by each of its faults: only its end is looked at.
  while (end > start && (text[end - 1] === '\n' || text[end - 1] === '\r')) end -= 1;
  return text.slice(start, end);
}
