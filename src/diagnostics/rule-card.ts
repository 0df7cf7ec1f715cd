import type { Span } from '../source/span.ts';
import type { Cost, Finding, Note, Severity, Suggestion } from './finding.ts';

/**
 * What an example of a rule is made of: the body of a guide (the test's driver puts ordinary front matter
 * before it, unless it begins with `---`), or whole files by path for a rule that needs more than a guide.
 */
export type RuleExample = string | { readonly [path: string]: string };

/**
 * Everything about a rule in one place: its message's code, why it exists, and the examples that its
 * handbook page shows and that the tests run.
 */
export interface RuleCard {
  readonly code: string;
  readonly severity: Severity;
  /** One line, as a heading: "A fastener is left over". */
  readonly title: string;
  /** Why a technician would care, in one paragraph of plain text. */
  readonly why: string;
  readonly bad: RuleExample;
  readonly good: RuleExample;
  /** What each fault of this rule costs the guide. */
  readonly costs?: Cost;
}

/** Makes a finding of a rule, with the code and severity of its card, what the card or this fault costs, and what causes it. */
export function finding(
  card: RuleCard,
  at: Span,
  message: string,
  extra: {
    readonly notes?: readonly Note[];
    readonly suggestion?: Suggestion | undefined;
    readonly costs?: Cost | undefined;
    readonly cause?: string | undefined;
  } = {},
): Finding {
  const costs = extra.costs ?? card.costs;
  return {
    code: card.code,
    severity: card.severity,
    message,
    at,
    notes: extra.notes ?? [],
    ...(extra.suggestion ? { suggestion: extra.suggestion } : {}),
    ...(costs ? { costs } : {}),
    ...(extra.cause === undefined ? {} : { cause: extra.cause }),
  };
}
