import type { Span, Written } from '../source/span.ts';
import type { Quantity } from '../units/quantity.ts';
import type { Step } from './guide.ts';
import type { Action, Ref, Verb } from './inline.ts';
import type { Side } from './item.ts';

/** A state in the technician's words, as the action table of the handbook prints it. */
export type StateName =
  | 'in the box'
  | 'in place'
  | 'started'
  | 'tight'
  | 'loosened'
  | 'off'
  | 'aside'
  | 'mated'
  | 'apart'
  | 'on'
  | 'not on'
  | 'holds'
  | 'does not hold'
  | 'lapsed'
  | 'not done'
  | 'as found'
  | 'set'
  | 'done'
  | 'discarded'
  | 'given to the owner';

/** What is judged of an action: its wording and its tools are the business of other rules. */
export interface PlayedAction extends Pick<Action, 'verb' | 'target' | 'trial' | 'at'> {
  readonly amount: Written<Pick<Quantity, 'dimension' | 'base'>> | null;
}

/** What every fault of the dry run has. */
interface Shown {
  /** The action that shows it; the declaration of what no action touches. */
  readonly at: Span;
  /** `null` where no action shows it: the needs of a step, an item that nothing touches. */
  readonly action: PlayedAction | null;
  readonly step: Step | null;
  /** The sides on which it happens; empty where its item has none. */
  readonly sides: readonly ('left' | 'right')[];
  /** The smallest build that shows it, told by as few options as will do; empty where every build shows it. */
  readonly witness: readonly { readonly option: string; readonly value: boolean | string }[];
  /** What a later step does that would have mended it, had it come before; `null` where none does. */
  readonly later: { readonly verb: Verb; readonly item: string; readonly at: Span } | null;
}

/** A fault that playing a guide brings to light. Items are named by id. */
export type Violation = Shown &
  (
    | {
        /** `item` is moved, or reached for, while `by` holds it, is plugged into it, or lies over it. */
        readonly kind: 'still-held' | 'still-connected' | 'still-covered';
        readonly item: string;
        readonly by: string;
      }
    | {
        /** A fastener goes in, or a plug goes on, while `part` is not there. */
        readonly kind: 'nothing-to-hold' | 'nothing-to-connect';
        readonly item: string;
        readonly part: string;
        readonly state: StateName;
      }
    | {
        /** `item` goes in where `by`, which it replaces or which replaces it, still sits. */
        readonly kind: 'place-taken';
        readonly item: string;
        readonly by: string;
      }
    | {
        /** The action asks for another state than the item is in. */
        readonly kind: 'wrong-state';
        readonly item: string;
        readonly state: StateName;
        /** The action that brought it into this state; `null` where it began so. */
        readonly earlier: Span | null;
      }
    | {
        /** The step is not done where the item is; `itemSide` is `null` for an item without sides. */
        readonly kind: 'side-mismatch';
        readonly item: string;
        readonly itemSide: Side | null;
        readonly stepSide: Side;
      }
    | {
        /**
         * A condition does not hold, or a measure has not been taken; `item` is `null` where the step asks, and the
         * action too where the step has begun with it.
         */
        readonly kind: 'needs-unmet';
        readonly item: string | null;
        readonly need: string;
        readonly state: StateName;
        /** The action that ended it; `null` where it never began. */
        readonly ended: Span | null;
      }
    | {
        /** The joint of the bolt `item` is tight while `part`, which lies on it, is not there. */
        readonly kind: 'stack-open';
        readonly item: string;
        readonly part: string;
      }
    | {
        /** `item` goes in without the supply that goes on its thread. */
        readonly kind: 'coat-missing';
        readonly item: string;
        readonly supply: string;
      }
    | {
        /** `item` is loosened while `by`, or another of its own, is loose: only one may be at a time. */
        readonly kind: 'loose-together';
        readonly item: string;
        readonly by: string;
      }
    | { readonly kind: 'before-trial'; readonly item: string; readonly trial: Ref }
    | {
        readonly kind: 'bonded' | 'one-time-refitted' | 'one-time-lost' | 'never-made' | 'never-applied';
        readonly item: string;
      }
    | {
        /** All that holds `part` was out, and it was neither lifted nor moved aside before this went back in. */
        readonly kind: 'never-lifted';
        readonly item: string;
        readonly part: string;
      }
    | {
        /** At the end it is not where it belongs. */
        readonly kind: 'left';
        readonly item: string;
        readonly state: StateName;
      }
    | {
        /** More of a supply is used than is declared; amounts in the base unit. */
        readonly kind: 'supply-overused';
        readonly item: string;
        readonly used: number;
        readonly declared: number;
        readonly from: readonly Span[];
      }
  );

/** The kinds of fault. */
export type ViolationKind = Violation['kind'];
