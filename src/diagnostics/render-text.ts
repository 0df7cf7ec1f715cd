import { styleText } from 'node:util';
import type { Span } from '../source/span.ts';
import { excerpt, printable } from './excerpt.ts';
import type { Finding } from './finding.ts';
import { placeOf, type RenderContext } from './place.ts';

/** How findings are laid out for a reader. */
interface TextStyle {
  /** Only for a terminal. */
  readonly colour: boolean;
  /** Cells of a line; excerpts are cut to it. */
  readonly width: number;
}

type Format = Parameters<typeof styleText>[0];

/** Prints findings for people, one after another with an empty line between; no closing line ending. */
export function renderText(findings: readonly Finding[], context: RenderContext, style: TextStyle): string {
  const paint = (format: Format, text: string) =>
    style.colour ? styleText(format, text, { validateStream: false }) : text;
  return findings
    .map((finding) => renderFinding(finding, context, style.width, paint).join('\n'))
    .join('\n\n');
}

function renderFinding(
  finding: Finding,
  context: RenderContext,
  width: number,
  paint: (format: Format, text: string) => string,
): string[] {
  const hue: Format = finding.severity === 'error' ? 'red' : 'yellow';
  const lines = [
    `${paint('bold', where(finding.at, context))}: ${paint(hue, finding.severity)} ${finding.code}`,
    `  ${printable(finding.message)}`,
    ...quoted(finding.at, context, width, (text) => paint(hue, text)),
  ];
  for (const note of finding.notes) {
    lines.push(`  ${printable(note.message)}${note.at ? ` (${where(note.at, context)})` : ''}`);
    if (note.at) lines.push(...quoted(note.at, context, width, (text) => paint('cyan', text)));
  }
  if (finding.suggestion) lines.push(`  ${mend(finding.suggestion.text)}`);
  return lines;
}

/** `folder/file.md:12:3`; a file as a whole has no line. */
function where(at: Span, { sources, prefix }: RenderContext): string {
  const place = placeOf(at, sources);
  const file = printable(prefix + at.file);
  return place ? `${file}:${place.start.line}:${place.start.column}` : file;
}

function quoted(at: Span, context: RenderContext, width: number, paint: (text: string) => string): string[] {
  const source = context.sources.get(at.file);
  if (!source || !placeOf(at, context.sources)) return [];
  const gutter = 9;
  const { line, text, underline } = excerpt(source, at, Math.max(20, width - gutter));
  return [`${String(line).padStart(6)} | ${text}`.trimEnd(), `${' '.repeat(6)} | ${paint(underline)}`];
}

function mend(text: string): string {
  if (text === '') return 'likely mend: take it out';
  return text.includes('\n')
    ? ['likely mend: write', ...text.split('\n').map((line) => `    ${printable(line)}`)].join('\n')
    : `likely mend: write ${printable(text.trim())}`;
}
