import stringWidth from 'string-width';
import { lineColumn, lineText, type SourceFile } from '../source/source-file.ts';
import type { Span } from '../source/span.ts';

/** A line of a file with a mark under a part of it, ready for a terminal of fixed-width cells. */
interface Excerpt {
  readonly line: number;
  readonly text: string;
  /** The mark as it stands under `text`. */
  readonly underline: string;
}

const tabStop = 4;
/** Cells of text that stay in sight before and after the mark of a line that is cut. */
const context = 12;

/**
 * The first line of a span, with the span underlined, at most `width` cells wide. A span over several lines is
 * marked to the end of its first; an empty span gets one mark.
 */
export function excerpt(source: SourceFile, span: Span, width: number): Excerpt {
  const { line, column } = lineColumn(source, span.start);
  // Of a line as long as a book, only what can come in sight is looked at.
  const reach = width * 8;
  const first = Math.max(0, column - 1 - reach);
  const marked = Math.min(span.end - span.start, reach);
  const start = column - 1 - first;
  const cells = toCells(lineText(source, line).slice(first, column - 1 + marked + reach));
  const from = cellAt(cells, start);
  const to = Math.max(cellAt(cells, start + marked), from + 1);
  return { line, ...cut(cells, from, to, width) };
}

/** What a terminal shows for one character as a reader sees it, and where that stands in the line. */
interface Cell {
  readonly shown: string;
  readonly width: number;
  readonly offset: number;
}

function toCells(text: string): Cell[] {
  // Most lines are plain, where each character is a cell of its own; to take the others apart costs fifty times that.
  if (/^[ -~]*$/.test(text)) return [...text].map((shown, offset) => ({ shown, width: 1, offset }));
  const cells: Cell[] = [];
  let column = 0;
  for (const { segment, index } of new Intl.Segmenter('en').segment(text)) {
    const shown = segment === '\t' ? ' '.repeat(tabStop - (column % tabStop)) : printable(segment);
    const width = segment === '\t' ? shown.length : stringWidth(shown);
    cells.push({ shown, width, offset: index });
    column += width;
  }
  return cells;
}

/** Index of the cell that holds an offset of the line; past the end, the number of cells. */
function cellAt(cells: readonly Cell[], offset: number): number {
  let index = cells.findIndex((cell) => cell.offset > offset) - 1;
  const last = cells[cells.length - 1];
  if (index < 0) index = last && offset < last.offset + last.shown.length ? cells.length - 1 : cells.length;
  return cells[0] && offset <= cells[0].offset ? 0 : index;
}

/** Cuts a long line on both sides so that the marked part, or its beginning, is in sight. */
function cut(cells: readonly Cell[], from: number, to: number, width: number) {
  const widthOf = (start: number, end: number) =>
    cells.slice(start, end).reduce((sum, cell) => sum + cell.width, 0);
  let start = 0;
  const before = Math.max(context, width - 2 - widthOf(from, to) - context);
  if (widthOf(0, cells.length) > width) while (widthOf(start, from) > before) start += 1;
  let end = cells.length;
  const room = width - (start > 0 ? 1 : 0);
  while (end > start + 1 && widthOf(start, end) + (end < cells.length ? 1 : 0) > room) end -= 1;
  const shown = cells.slice(start, end).map((cell) => cell.shown);
  const text = `${start > 0 ? '…' : ''}${shown.join('')}${end < cells.length ? '…' : ''}`;
  const indent = widthOf(start, Math.min(from, end)) + (start > 0 ? 1 : 0);
  const marked = Math.max(1, widthOf(from, Math.min(to, end)));
  return { text: text.trimEnd(), underline: ' '.repeat(indent) + '~'.repeat(marked) };
}

/** Text that cannot steer a terminal: control and direction characters are shown as a box. */
export function printable(text: string): string {
  return text.replace(/(?!\n)[\p{Cc}\p{Bidi_Control}]/gu, '\u25a1');
}
