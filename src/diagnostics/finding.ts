import { compareSpans, type Span } from '../source/span.ts';

/** An error stops publication; a warning is what a careful shop may leave. */
export type Severity = 'error' | 'warning';

/** A second place, or a line of help, that belongs to a finding. */
export interface Note {
  readonly message: string;
  readonly at?: Span;
}

/** An edit that would mend the fault: put `text` in the place of `at`. */
export interface Suggestion {
  readonly at: Span;
  readonly text: string;
}

/**
 * What nobody knows of a guide because of a fault, besides the line that the fault is on: which build has what, or
 * what a placed procedure brings.
 */
export type Cost = 'condition' | 'procedure';

/** One fault in what an author wrote. */
export interface Finding {
  /** The rule's name: kebab-case, `thing-problem`. */
  readonly code: string;
  readonly severity: Severity;
  /** What was found and what was expected, in a technician's words; no closing full stop. */
  readonly message: string;
  readonly at: Span;
  readonly notes: readonly Note[];
  readonly suggestion?: Suggestion;
  /** For the stages after this one, which stay silent about what is lost; it is not printed. */
  readonly costs?: Cost;
  /**
   * What is at fault, where one fault shows in many places: the findings of a rule that share it are told as one.
   * It is not printed.
   */
  readonly cause?: string;
}

/** Orders findings by file, place and code, so that every run prints them alike. */
export function compareFindings(a: Finding, b: Finding): number {
  return compareSpans(a.at, b.at) || (a.code < b.code ? -1 : a.code > b.code ? 1 : 0);
}
