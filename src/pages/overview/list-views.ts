import type { OwnPictureView } from '../frame/own-picture.ts';
import type { Shown, StepRef, VaryingView } from '../frame/shared-views.ts';

/** What must be within reach. A list that is empty on purpose says so. */
export interface GatherView {
  readonly wear: readonly GatherRow[];
  readonly tools: readonly GatherRow[];
  readonly supplies: readonly GatherRow[];
  readonly kit: readonly GatherRow[];
  readonly nones: readonly string[];
}

/** One line of the gather list. */
export interface GatherRow extends Shown {
  /** The item's own id; `id` is that of its row. */
  readonly item: string;
  readonly id: string;
  readonly name: string;
  /** The page about it; `null` where there is none. */
  readonly page: string | null;
  /** `null` where there is none, and in a set, whose sizes have theirs. */
  readonly picture: OwnPictureView | null;
  /** What else is said about it: the tools that serve as well, the thread and torque of a nut. */
  readonly detail: string | null;
  readonly amount: readonly VaryingView[];
  /** What of a supply the steps use. */
  readonly used: readonly VaryingView[];
  /** Empty where `sizes` tell it. */
  readonly first: readonly StepRef[];
  /** The sizes of a set, each with its anchor and the step that needs it first; empty for a single thing. */
  readonly sizes: readonly {
    readonly id: string;
    readonly size: string;
    readonly page: string | null;
    readonly picture: OwnPictureView | null;
    readonly first: readonly StepRef[];
  }[];
}

/** A part, fastener or connector of the vehicle that the job touches. */
export interface ComesOffRow extends Shown {
  /** The item's own id; `id` is that of its row. */
  readonly item: string;
  readonly id: string;
  readonly name: string;
  /** The page of its kind of fastener; `null` where there is none. */
  readonly page: string | null;
  readonly picture: OwnPictureView | null;
  readonly count: string;
  readonly detail: string | null;
  readonly first: readonly StepRef[];
}

/** A rating, a claimed load or a circuit. */
export interface LimitRow extends Shown {
  /** The item's own id; `id` is that of its row. */
  readonly item: string;
  readonly id: string;
  readonly name: string;
  readonly value: string;
  /** Whether it is the weakest of several limits of its kind. */
  readonly governs: boolean;
}
