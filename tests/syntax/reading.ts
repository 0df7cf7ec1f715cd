import type { Finding } from '../../src/diagnostics/finding.ts';
import { collector } from '../../src/diagnostics/report.ts';
import { lineColumn, sourceFile } from '../../src/source/source-file.ts';
import type { Span } from '../../src/source/span.ts';
import type { DirectiveNames } from '../../src/syntax/names.ts';
import { type DocumentRead, readMarkdown } from '../../src/syntax/read.ts';

/** The names of the format, as far as these tests write them. */
export const names: DirectiveNames = {
  leaf: new Set(['step', 'tool', 'kit', 'supply', 'datum', 'outline']),
  container: new Set(['note', 'why', 'notice', 'warning', 'figure', 'cut-template']),
  text: new Set(['tool', 'kit', 'step', 'remove', 'tighten', 'disconnect', 'where', 'mark']),
  flags: new Set(['temporary', 'immobile']),
};

/** Reads a text as a guide. */
export function read(text: string): DocumentRead & { readonly findings: readonly Finding[] } {
  const { findings, report } = collector();
  return { ...readMarkdown(sourceFile('guide.md', text), names, report), findings };
}

/** The findings of a text, one a line: the code, the place in text and the message. */
export function found(text: string): string[] {
  return read(text).findings.map(({ code, at, message }) => `${code} at ${written(text, at)}: ${message}`);
}

/** The text at a place. */
export function written(text: string, at: Span): string {
  return `"${text.slice(at.start, at.end)}"`;
}

/** Line and column of a place, as an editor shows them. */
export function place(text: string, at: Span): string {
  const { line, column } = lineColumn(sourceFile('guide.md', text), at.start);
  return `${line}:${column}`;
}
