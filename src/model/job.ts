import type { Span } from '../source/span.ts';
import type { Estimate } from '../units/estimate.ts';
import type { Minutes, Quantity } from '../units/quantity.ts';
import type { SafetyMessage } from './block.ts';
import type { Side } from './item.ts';
import type { Schedule } from './schedule.ts';
import type { StateName, Violation } from './violation.ts';
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
  /** Every fault that playing the guide brings to light, each once, as far as it can be played. */
  readonly violations: readonly Violation[];
  /** Where playing stopped, since from there it is not known what is done; `null` where all was played. */
  readonly halt: Span | null;
  /** Whether the guide declares anything that is counted: a print says "not accounted" where it does not. */
  readonly accounted: boolean;
  /** One plan for each distinct outcome; builds for which the guide reads alike share one. */
  readonly plans: readonly Plan[];
}

/** What keeps a guide from being worked out for every build. */
export type BuildProblem =
  /** More builds than can be told apart: the platform has to list those that it supports. */
  | { readonly kind: 'too-many-builds'; readonly options: readonly string[] }
  /** Every combination is impossible. */
  | { readonly kind: 'no-build' }
  /** More distinct outcomes than a page can carry; `split` are the options, and after them inspections, that make them. */
  | { readonly kind: 'too-many-outcomes'; readonly outcomes: number; readonly split: readonly string[] };

/** The job as it is for a set of builds that read alike. */
export interface Plan {
  /** Position in {@link Job.plans}. */
  readonly index: number;
  /** The builds, each reduced to the deciding options. */
  readonly builds: readonly Build[];
  /** What sets these builds apart, for people: "with front fog lamps, LED headlamps"; empty for a single plan. */
  readonly statement: string;
  /** What its inspections found: "with thread: worn out"; empty where nothing hangs on a finding. */
  readonly found: string;
  readonly steps: readonly PlannedStep[];
  readonly gather: GatherList;
  /** Safety messages of the whole job, most severe word first, then in the order of the text. */
  readonly messages: readonly PlacedMessage[];
  readonly time: TimeTotals;
  /** For one technician, for two and for the shop's crew; empty where no step states a time. */
  readonly schedules: readonly Schedule[];
  readonly bags: readonly Bag[];
  readonly countSheet: readonly CountLine[];
  readonly fasteners: readonly FastenerLine[];
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
  /** The steps that must come before it, and how many minutes before; those that others stand for are left out. */
  readonly after: readonly { readonly step: string; readonly wait: Minutes }[];
  /** Whether it may change places with the step before it in its section, and with the one after it. */
  readonly free: { readonly before: boolean; readonly after: boolean };
  /** Tools of its actions and mentions, in the order of first use. */
  readonly tools: readonly string[];
  readonly wear: readonly string[];
  /** The vehicle and the bench when the step is done. */
  readonly bench: BenchState;
}

/** What is off, apart, loose, aside, on or in force when a step is done. */
export interface BenchState {
  readonly off: readonly BenchItem[];
  readonly apart: readonly BenchItem[];
  /** Started or loosened: in, and not tight; and what stands in its place with nothing left that holds it. */
  readonly loose: readonly BenchItem[];
  readonly aside: readonly BenchItem[];
  /** Temporary supplies that must come off again. */
  readonly on: readonly BenchItem[];
  /** Conditions that hold. */
  readonly holds: readonly BenchItem[];
  /** `not stated` where the guide marks nothing as immobile: that is never a leave to move. */
  readonly movement: 'may be moved' | 'must not be moved' | 'not stated';
}

/** A thing on the bench or half done on the vehicle. */
export interface BenchItem {
  readonly item: string;
  /** How many, both sides together. */
  readonly count: number;
  /** The sides that are so; `each` is both, `null` is an item without sides. */
  readonly side: Side | null;
}

/** A bag of fasteners: one for each step that takes some off. */
export interface Bag {
  /** Counts from 1 through the plan. */
  readonly number: number;
  readonly step: string;
  readonly contents: readonly BagLine[];
}

/** Fasteners in a bag, and where they go. */
export interface BagLine extends BenchItem {
  /** The step that puts them back; `null` where they are discarded, given away or never put back. */
  readonly backIn: string | null;
  readonly end: StateName;
}

/**
 * What became of one item, both sides together. A thing of the vehicle: removed = refitted + discarded +
 * handed over + replaced. A thing from the box: box = fitted + discarded + handed over + spare.
 */
export interface CountLine {
  readonly item: string;
  readonly from: 'vehicle' | 'box';
  /** Taken off the vehicle, or in the box. */
  readonly out: number;
  /** Back on the vehicle, or fitted to it. */
  readonly back: number;
  readonly discarded: number;
  readonly handedOver: number;
  /** On the bench, with another in its place. */
  readonly replaced: number;
  /** Not fitted and named as spare. */
  readonly spare: number;
}

/** A fastener of the guide with what is done to it. */
export interface FastenerLine {
  readonly item: string;
  readonly from: 'vehicle' | 'box';
  readonly count: number;
  readonly perSide: number | null;
  readonly removedIn: string | null;
  /** The step that puts it in: refits, fits or starts it. */
  readonly putIn: string | null;
  readonly tightenedIn: string | null;
  /** Tools that the actions on it name, in the order of first use. */
  readonly tools: readonly string[];
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
  /** How many of it the quickest schedules keep in use at the same time: more than one only where more are at hand. */
  readonly atOnce: number;
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
