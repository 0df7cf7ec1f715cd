import type { Span, Written } from '../source/span.ts';

/** A condition on the build of the vehicle, as written in `when="…"`. */
export type When =
  | { readonly kind: 'has'; readonly option: string; readonly at: Span }
  | { readonly kind: 'is'; readonly option: string; readonly value: string; readonly at: Span }
  | { readonly kind: 'not'; readonly of: When; readonly at: Span }
  | { readonly kind: 'and' | 'or'; readonly of: readonly When[]; readonly at: Span };

/** Something in which builds can differ. */
export interface Option {
  readonly id: string;
  /** What a person reads: "Front fog lamps". */
  readonly name: string;
  /** The choices of a one-of option, in the order written; `null` for yes or no. */
  readonly choices: readonly Choice[] | null;
  /** The customer wishes it or not; else it is a fact of the vehicle. */
  readonly wish: boolean;
  readonly at: Span;
}

/** One choice of a one-of option. */
interface Choice {
  readonly id: string;
  readonly name: string;
  readonly at: Span;
}

/** One way a vehicle can be equipped: a value for every option, `true`/`false` or a choice's id. */
export type Build = { readonly [option: string]: boolean | string };

/** Every build that a platform, or a guide on it, has to be right for. */
export interface BuildSpace {
  readonly options: readonly Option[];
  /** The builds that the platform lists (an option left out of one is open); `null` where it lists none. */
  readonly listed: readonly Written<Partial<Build>>[] | null;
  /** Combinations that do not exist. */
  readonly impossible: readonly Written<When>[];
}
