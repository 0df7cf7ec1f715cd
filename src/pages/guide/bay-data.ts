import type { TradeWords } from '../../trade/words.ts';

/** What the page's script must know of the guide to keep ticks and readings on the device. */
export interface BayData {
  readonly guide: string;
  readonly title: string;
  /** "revision 3, 2 October 2026"; empty where the guide states neither. */
  readonly edition: string;
  readonly revision: string | null;
  readonly fingerprint: string;
  readonly words: Pick<TradeWords, 'vehicle' | 'left' | 'right'>;
  readonly steps: readonly BayStep[];
  /** Of a visit: the guides that it was planned from. */
  readonly guides: readonly PlannedGuide[];
  /** What is looked over before the job: each part that it touches. */
  readonly intake: readonly IntakePlace[];
  readonly rechecks: readonly BayRecheck[];
}

/** A guide of a visit, by which the record of the work is found again. */
interface PlannedGuide {
  readonly id: string;
  readonly title: string;
  readonly revision: string | null;
  readonly fingerprint: string;
}

/** A place that is looked over at the intake. */
export interface IntakePlace {
  readonly id: string;
  readonly name: string;
  /** Positions of the plans that it is for; `null` for all. */
  readonly plans: string | null;
}

/** Something that is looked at again after the job. */
interface BayRecheck {
  readonly what: string;
  /** The torque, or what a reading should be. */
  readonly detail: string;
  readonly when: string;
  /** The same as an author writes it: `500 km or 3 months`. */
  readonly terms: string;
  readonly plans: string | null;
}

/** A step as progress is kept for it. */
export interface BayStep {
  readonly id: string;
  readonly title: string;
  readonly fingerprint: string;
  /** Whether it is done on each side, and so ticked twice. */
  readonly sides: boolean;
  /** Minutes that nobody works after it. */
  readonly wait: number;
}
