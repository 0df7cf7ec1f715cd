import type { Span } from '../source/span.ts';
import type { Finding } from './finding.ts';
import { placeOf, type RenderContext } from './place.ts';
import { countFindings } from './summary.ts';

/**
 * Prints findings for programs, as one JSON object:
 *
 * - `version`: 1, raised when the shape changes
 * - `guides`, `errors`, `warnings`: counts
 * - `findings`: each `{code, severity, message, at, notes, suggestion}`; `notes` are `{message, at}`, a
 *   `suggestion` is `{at, text}` or `null`
 * - `at`: `{file, start, end}`; `start` and `end` are `{offset, line, column}`, lines and columns from 1,
 *   offsets from 0 and columns in UTF-16 units, both `null` for a file as a whole; a note's `at` may be `null`
 */
export function renderJson(findings: readonly Finding[], guides: number, context: RenderContext): string {
  const report = {
    version: 1,
    guides,
    ...countFindings(findings),
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
