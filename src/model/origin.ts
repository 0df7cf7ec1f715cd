import type { Span } from '../source/span.ts';

/** How something came into a guide that the guide's own file does not spell out. */
export type Origin =
  /** Placed by `::procedure{of=…}`; `at` is that line. */
  | { readonly kind: 'procedure'; readonly procedure: string; readonly at: Span }
  /** Worked out by `::reverse{of=…}` from the step `step`; `at` is that line, and `leftOut` what it does not undo. */
  | {
      readonly kind: 'reverse';
      readonly step: string;
      readonly leftOut: readonly string[];
      readonly at: Span;
    };
