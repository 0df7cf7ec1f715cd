import type { Span } from '../source/span.ts';
import type { Ref } from './inline.ts';
import type { Origin } from './origin.ts';

/** Fasteners that are tightened together in one order, pass by pass. */
export interface Sequence {
  readonly id: string;
  readonly idAt: Span;
  readonly label: string;
  readonly order: readonly Ref[];
  readonly origins: readonly Origin[];
  readonly at: Span;
}
