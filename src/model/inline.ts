import type { Span, Written } from '../source/span.ts';
import type { Quantity } from '../units/quantity.ts';
import type { When } from './when.ts';

/** The id of an item, step or template that an author wrote, and where. */
export type Ref = Written<string>;

/** What a mention can name. */
export type MentionKind =
  | 'wear'
  | 'tool'
  | 'supply'
  | 'kit'
  | 'part'
  | 'fastener'
  | 'connector'
  | 'condition'
  | 'setting'
  | 'inspection'
  | 'rating'
  | 'circuit'
  | 'step'
  | 'cut-template'
  | 'hole';

/** A noun printed from its declaration: `:tool[trim-lever]`. */
export interface Mention {
  readonly type: 'mention';
  readonly of: MentionKind;
  readonly target: Ref;
  /** The noun to print instead, from `as=`. */
  readonly as: string | null;
  readonly when: Written<When> | null;
  readonly at: Span;
}

/** What the hands do; the table of their meaning is `job/actions.ts`. */
export type Verb =
  | 'remove'
  | 'refit'
  | 'fit'
  | 'start'
  | 'tighten'
  | 'loosen'
  | 'disconnect'
  | 'connect'
  | 'move-aside'
  | 'move-back'
  | 'apply'
  | 'take-off'
  | 'set'
  | 'clear'
  | 'clean'
  | 'route'
  | 'measure'
  | 'inspect'
  | 'cut'
  | 'drill'
  | 'bond'
  | 'discard'
  | 'hand-over';

/** The place of an action among those that a sequence stands for. */
export interface SequencePlace {
  readonly sequence: string;
  readonly label: string;
  /** Counts from 0. */
  readonly place: number;
  readonly of: number;
}

/** Something done to an item: `:remove[arch-screw]{with=socket-7}`. */
export interface Action {
  readonly type: 'action';
  readonly verb: Verb;
  readonly target: Ref;
  /** Tools named by `with=`. */
  readonly with: readonly Ref[];
  /** The verb to print instead. */
  readonly say: string | null;
  /** The noun to print instead. */
  readonly as: string | null;
  /** How much of a supply `apply` uses. */
  readonly amount: Written<Quantity> | null;
  /** What `apply` puts a supply on. */
  readonly on: readonly Ref[];
  /** How much area or length `apply` covers. */
  readonly over: Written<Quantity> | null;
  /** Where what leaves the job goes: "scrap metal". */
  readonly to: string | null;
  /** The step that tried the fit before something is done for good. */
  readonly trial: Ref | null;
  readonly when: Written<When> | null;
  /** Its place in a sequence that the sentence names as a whole; `null` for an action of its own. */
  readonly inSequence: SequencePlace | null;
  /** Names of attributes that were written but could not be read; rules stay silent about them. */
  readonly unknown: ReadonlySet<string>;
  readonly at: Span;
}
