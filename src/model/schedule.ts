import type { Expectation } from '../trade/labour.ts';
import type { Minutes } from '../units/quantity.ts';

/** Who does what when, for a number of technicians, from the expected (PERT mean) time of each step. */
export interface Schedule {
  /** Technicians who are there throughout; where a step asks for more, helpers are called in for it. */
  readonly crew: number;
  /** In the order of their starts, then of the plan. */
  readonly tasks: readonly ScheduledTask[];
  /** From the first step to the end of the last step or wait; its spread is that of the critical chain. */
  readonly elapsed: Expectation;
  /** When the last hands leave; only a wait can come after it. */
  readonly workEnds: Minutes;
  /** Time of all steps together, however many people they take. */
  readonly handsOn: Expectation;
  /** Everybody's time, helpers' too, in tenths of an hour: summed first and rounded once. */
  readonly labour: number;
  /** When more hands are needed than the crew has, in order; stretches that touch are one. */
  readonly helpers: readonly HelperCall[];
  /** False where the search was cut short: a quicker order may exist, but the written one is not quicker. */
  readonly proved: boolean;
}

/** A step, or one side of a step that is done on each, as it stands in the schedule. */
export interface ScheduledTask {
  readonly step: string;
  /** What it is called. */
  readonly title: string;
  /** The step's number in the plan; `null` for a proof that takes time. */
  readonly number: number | null;
  /** `null` for a step that is not done on each side by itself. */
  readonly side: 'left' | 'right' | null;
  readonly start: Minutes;
  readonly finish: Minutes;
  /** Minutes nobody works after it. */
  readonly wait: Minutes;
  /** How many pairs of hands it takes. */
  readonly people: number;
  /** Who does it, counted from 1; numbers above the crew are helpers. */
  readonly hands: readonly number[];
  /** Whether it lies on the critical chain: when it runs late, so does the job. */
  readonly critical: boolean;
}

/** A stretch of time for which people are called in. */
export interface HelperCall {
  readonly from: Minutes;
  readonly to: Minutes;
  /** How many besides the crew. */
  readonly people: number;
}
