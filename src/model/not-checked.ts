import type { WorkClass } from './item.ts';
import type { When } from './when.ts';

/**
 * Something that is judged in other guides and not in this one, since a fact is missing or no table has it. It is
 * printed and published, and never a finding.
 */
export type NotChecked = {
  /** For which builds it stands, outermost first; empty for every build. */
  readonly whens: readonly When[];
} & (
  | { readonly check: 'torque'; readonly item: string; readonly lacks: 'thread' | 'grade' | 'table' }
  /** Whether `tool` fits a fastener that states no drive. */
  | { readonly check: 'fit'; readonly item: string; readonly tool: string; readonly lacks: 'drive' }
  /** Whether a bolt is long enough for what lies on it, and whether `piece` goes onto it. */
  | { readonly check: 'grip'; readonly item: string; readonly piece: string; readonly lacks: 'length' }
  | { readonly check: 'joint'; readonly item: string; readonly piece: string; readonly lacks: 'thread' }
  | { readonly check: 'width'; readonly item: string; readonly lacks: 'table' }
  | {
      readonly check: 'hole';
      /** The template; `label` is the hole's own. */
      readonly item: string;
      readonly label: string;
      readonly lacks: 'fastener' | 'thread' | 'table';
    }
  | { readonly check: 'cut'; readonly item: string; readonly tool: string; readonly lacks: 'radius' }
  /** Whether the cuts of two templates keep clear of each other on the panel that both are cut in. */
  | { readonly check: 'panel'; readonly item: string; readonly other: string; readonly lacks: 'datums' }
  | { readonly check: 'wiring'; readonly item: string; readonly lacks: 'circuit' }
  | { readonly check: 'load'; readonly item: string; readonly lacks: 'limit' | 'figure' }
  /** What a guide of a visit adds to a limit that others load too; `guide` is its name. */
  | { readonly check: 'load'; readonly item: string; readonly guide: string; readonly lacks: 'claim' }
  /** Whether a load or water waits until a supply has cured. */
  | { readonly check: 'cure'; readonly item: string; readonly lacks: 'need' }
  /** Whether the messages and signatures stand that a kind of work asks for, of which an item's name speaks. */
  | { readonly check: 'care'; readonly item: string; readonly work: WorkClass; readonly lacks: 'class' }
  /** A claim and a limit of kinds that nobody can hold against each other. */
  | { readonly check: 'load'; readonly item: string; readonly against: string; readonly lacks: 'kind' }
);
