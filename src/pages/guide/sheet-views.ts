import type { Markup } from '../../html/markup.ts';
import type { Shown, StepRef } from '../frame/shared-views.ts';
import type { ReadingView } from '../steps/block-views.ts';
import type { TorqueView } from '../steps/step-views.ts';

/** What is filled in during the job, on paper. */
export interface SheetsView {
  readonly torques: readonly TorqueRow[];
  readonly bags: readonly BagView[];
  readonly counts: readonly CountRow[];
  readonly evidence: readonly EvidenceRow[];
  readonly signOffs: readonly SignOffRow[];
}

/** A line of the torque log. */
export interface TorqueRow extends TorqueView {
  readonly step: StepRef;
}

/** A bag of fasteners, with what its label says. */
export interface BagView extends Shown {
  readonly number: number;
  /** The step that fills it. */
  readonly step: StepRef | null;
  readonly contents: readonly {
    readonly text: string;
    /** The step that puts it back. */
    readonly back: StepRef | null;
    /** What becomes of it otherwise. */
    readonly end: string | null;
  }[];
}

/** A line of the count sheet, both sides together. */
export interface CountRow extends Shown {
  readonly name: string;
  readonly from: string;
  readonly out: number;
  /** How many; "as needed" of what a reading chooses. */
  readonly back: string;
  /** What does not go back: "2 discarded, 1 spare". */
  readonly elsewhere: string;
}

/** A photograph, a setting or a reading that is asked for. */
export interface EvidenceRow extends Shown {
  /** `null` outside the steps. */
  readonly step: StepRef | null;
  /** "bolt photo 1": what the keys of its fields on the page begin with. */
  readonly key: string;
  readonly what: string;
  readonly text: Markup;
  /** What it should be; `null` for a photograph, and where nothing is stated. */
  readonly expect: string | null;
  /** Where on the print its value is written, so that no value has two blanks; `null` where it is written here. */
  readonly written: string | null;
  readonly sides: ReadingView['sides'];
}

/** A step that a second person signs. */
export interface SignOffRow extends Shown {
  readonly step: StepRef;
}
