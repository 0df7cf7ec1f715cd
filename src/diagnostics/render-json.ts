import type { Span } from '../source/span.ts';
import type { Finding } from './finding.ts';
import { placeOf, type RenderContext } from './place.ts';
import { countFindings } from './summary.ts';

/** What is told of a template though nothing is wrong with it. */
export interface ToldTemplate {
  readonly file: string;
  readonly id: string;
  readonly title: string;
  /** A sentence each, without its stop. */
  readonly done: readonly string[];
}

/**
 * Prints findings for programs, as one JSON object:
 *
 * - `version`: 1, raised when the shape changes
 * - `guides`, `errors`, `warnings`: counts
 * - `templates`: what was done to each template before the line to cut, `{file, id, title, done}` with sentences in
 *   `done`; those to which nothing was done are left out
 * - `findings`: each `{code, severity, message, at, notes, suggestion}`; `notes` are `{message, at}`, a
 *   `suggestion` is `{at, text}` or `null`
 * - `at`: `{file, start, end}`; `start` and `end` are `{offset, line, column}`, lines and columns from 1,
 *   offsets from 0 and columns in UTF-16 units, both `null` for a file as a whole; a note's `at` may be `null`
 */
export function renderJson(
  findings: readonly Finding[],
  guides: number,
  templates: readonly ToldTemplate[],
  context: RenderContext,
): string {
  const report = {
    version: 1,
    guides,
    ...countFindings(findings),
    templates: templates.map(({ file, id, title, done }) => ({
      file: context.prefix + file,
      id,
      title,
      done,
    })),
    findings: findings.map(({ code, severity, message, at, notes, suggestion }) => ({
      code,
      severity,
      message,
      at: located(at, context),
      notes: notes.map((note) => ({ message: note.message, at: note.at ? located(note.at, context) : null })),
      suggestion: suggestion ? { at: located(suggestion.at, context), text: suggestion.text } : null,
    })),
  };
  return JSON.stringify(report, null, 2);
}

function located(span: Span, { sources, prefix }: RenderContext) {
  const place = placeOf(span, sources);
  return {
    file: prefix + span.file,
    start: place && { offset: span.start, ...place.start },
    end: place && { offset: span.end, ...place.end },
  };
}
