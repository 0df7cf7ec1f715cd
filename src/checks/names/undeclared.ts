import type { Note } from '../../diagnostics/finding.ts';
import type { Report } from '../../diagnostics/report.ts';
import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { otherPlaces } from '../../diagnostics/told-once.ts';
import type { Reference } from './references.ts';

/** What is said about an id that does not exist, besides where. */
export interface Undeclared {
  readonly message: string;
  readonly notes?: readonly Note[];
  /** The id that was likely meant. */
  readonly likely?: string | undefined;
}

/**
 * Reports ids that do not exist: one finding for each, at its first place, with the other places as notes,
 * since one missing declaration is one fault however often it is used.
 */
export function reportUndeclared(
  card: RuleCard,
  references: readonly Reference[],
  describe: (first: Reference) => Undeclared,
  report: Report,
): void {
  const byId = new Map<string, Reference[]>();
  for (const one of references) byId.set(one.ref.value, [...(byId.get(one.ref.value) ?? []), one]);
  for (const [first, ...others] of byId.values()) {
    if (!first) continue;
    const { message, notes = [], likely } = describe(first);
    const places = otherPlaces(
      'also named here',
      others.map(({ ref }) => ref.at),
    );
    report(
      finding(card, first.ref.at, message, {
        notes: [...notes, ...places],
        suggestion: likely === undefined ? undefined : { at: first.ref.at, text: likely },
      }),
    );
  }
}

/** "the step "Free the arch edge" names", for the beginning of a message. */
export function whoNames({ step, from }: Reference): string {
  if (from !== null) return `the declaration of "${from}" names`;
  return step ? `the step "${step.titleText}" names` : 'the text names';
}
