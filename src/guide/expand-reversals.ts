import type { Report } from '../diagnostics/report.ts';
import type { Section } from '../model/guide.ts';
import type { Item } from '../model/item.ts';
import { type DraftSection, isStep } from './draft.ts';

/** What the working out of reversals may ask. */
export interface Reversing {
  /** Steps that placed procedures brought, by the id of the place. */
  readonly brought: ReadonlyMap<string, readonly string[]>;
  readonly items: ReadonlyMap<string, Item>;
  readonly report: Report;
}

/** Spells out every reversal, in the order of the text. */
export function expandReversals(
  sections: readonly DraftSection[],
  _reversing: Reversing,
): readonly Section[] {
  return sections.map(({ entries, ...section }) => ({ ...section, steps: entries.filter(isStep) }));
}
