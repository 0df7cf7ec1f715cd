import type { Span } from '../source/span.ts';
import type { Quantity } from '../units/quantity.ts';
import type { SafetyMessage } from './block.ts';
import type { Estimate } from './guide.ts';
import type { Build } from './when.ts';

/** Everything that is worked out about a guide, once, for each outcome that its builds can have. */
export interface Job {
  /** Of what the technician is told and the geometry: changes when, and only when, the job changes. */
  readonly fingerprint: string;
  readonly stepFingerprints: ReadonlyMap<string, string>;
  /** The options that any `when` of the guide asks about, in the order of declaration. */
  readonly decidingOptions: readonly string[];
  /** Why the plans do not stand for every build; `null` where they do. */
  readonly buildProblem: BuildProblem | null;
  /** One plan for each distinct outcome; builds for which the guide reads alike share one. */
  readonly plans: readonly Plan[];
}

/** What keeps a guide from being worked out for every build. */
export type BuildProblem =
  /** More builds than can be told apart: the platform has to list those that it supports. */
  | { readonly kind: 'too-many-builds'; readonly options: readonly string[] }
  /** Every combination is impossible. */
  | { readonly kind: 'no-build' }
  /** More distinct outcomes than a page can carry; `split` are the options that want a guide each. */
  | { readonly kind: 'too-many-outcomes'; readonly outcomes: number; readonly split: readonly string[] };

/** The job as it is for a set of builds that read alike. */
export interface Plan {
  /** Position in {@link Job.plans}. */
  readonly index: number;
  /** The builds, each reduced to the deciding options. */
  readonly builds: readonly Build[];
  /** What sets these builds apart, for people: "with front fog lamps, LED headlamps"; empty for a single plan. */
  readonly statement: string;
  readonly steps: readonly PlannedStep[];
  readonly gather: GatherList;
  /** Safety messages of the whole job, most severe word first, then in the order of the text. */
  readonly messages: readonly PlacedMessage[];
  readonly time: TimeTotals;
}

/** A step that this plan carries out. */
export interface PlannedStep {
  readonly id: string;
  readonly section: string;
  /** Counts from 1 through the plan. */
  readonly number: number;
  /** For the whole step: both sides of a step that is done on each. `null` where no time is stated. */
  readonly time: Estimate | null;
  /** Minutes nobody works after it. */
  readonly wait: number;
  readonly people: number;
  /** Tools of its actions and mentions, in the order of first use. */
  readonly tools: readonly string[];
  readonly wear: readonly string[];
}

/** What must be within reach before the job begins. */
export interface GatherList {
  readonly tools: readonly GatherTool[];
  readonly wear: readonly GatherWear[];
  readonly supplies: readonly GatherSupply[];
  readonly kit: readonly GatherKit[];
}

/** A tool, once. */
export interface GatherTool {
  readonly item: string;
  /** The step that needs it first; `null` for a tool that no step of this plan uses. */
  readonly firstStep: string | null;
  readonly steps: readonly string[];
}

/** Protective equipment, once. */
export interface GatherWear {
  readonly item: string;
  readonly firstStep: string | null;
}

/** A supply with what is declared and what the steps use. */
export interface GatherSupply {
  readonly item: string;
  readonly declared: Quantity | null;
  /** In the base unit of its dimension; `null` where no step states an amount. */
  readonly used: number | null;
  /** The amounts that `used` was summed from. */
  readonly from: readonly Span[];
  readonly firstStep: string | null;
}

/** A thing from the accessory's box. */
export interface GatherKit {
  readonly item: string;
  /** In all, both sides together. */
  readonly count: number;
  /** Each side's, where it has sides. */
  readonly perSide: number | null;
  readonly spare: number;
  readonly firstStep: string | null;
}

/** A safety message with where it stands. */
export interface PlacedMessage {
  readonly message: SafetyMessage;
  readonly section: string;
  /** `null` for a message that guards its section. */
  readonly step: string | null;
}

/** Sums of time, each with the places it was summed from. */
export interface TimeTotals {
  readonly job: Estimate;
  readonly sections: readonly { readonly section: string; readonly estimate: Estimate }[];
  /** Hands-on minutes during which a second pair of hands is needed. */
  readonly helper: Estimate;
  readonly waiting: number;
  readonly from: readonly Span[];
  /** Steps that state no time, so that the sums leave them out. */
  readonly untimed: readonly string[];
}
