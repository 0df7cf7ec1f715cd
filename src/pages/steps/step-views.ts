import type { Markup } from '../../html/markup.ts';
import type { Shown, StepRef, VaryingView } from '../frame/shared-views.ts';
import type { BlockView, ReadingView } from './block-views.ts';
import type { PlaceView } from './place.ts';
import type { PositionsView, StackView } from './tightening/stacks.ts';
import type { TighteningView } from './tightening/tightening.ts';
import type { TypedCheck } from './typed-check.ts';

/** One step. */
export interface StepView extends Shown {
  readonly id: string;
  readonly number: number;
  /** Its time, people or place is other than in the latest release, or it is new. */
  readonly changed: boolean;
  readonly title: Markup;
  /** Where it is done; `null` for a platform without zones. */
  readonly place: PlaceView | null;
  /** Sides, time and people, each in words. */
  readonly facts: readonly string[];
  readonly needs: readonly string[];
  readonly blocks: readonly BlockView[];
  readonly tools: readonly VaryingView[];
  readonly wear: readonly VaryingView[];
  readonly torques: readonly TorqueView[];
  readonly orders: readonly TighteningView[];
  readonly stacks: readonly StackView[];
  readonly positions: PositionsView | null;
  /** Whether anything stands in the lines under the step. */
  readonly hasLines: boolean;
  readonly cables: readonly CableView[];
  readonly settings: readonly SettingView[];
  readonly inspections: readonly InspectionView[];
  /** The job ends with it. */
  readonly stop: boolean;
  /** How often it is done, on each side; `null` for a step that is done once. */
  readonly times: number | null;
  /** What stands at the tick of each time: "2", or "left 2" where it is done on each side. */
  readonly rounds: readonly string[];
  /** What ends the repeating: "the toe reads 1–2 mm"; `null` for a step that is done so often. */
  readonly until: string | null;
  readonly readings: readonly ReadingView[];
  readonly wait: string | null;
  readonly signOff: boolean;
  /** Where it may also be done; `null` where the written order binds. */
  readonly anyOrder: string | null;
}

/** A cable that is cut or closed at its ends in the step. */
export interface CableView extends Shown {
  readonly name: string;
  /** "3 m of 2.5 mm² one way, red insulation, fuse 10 A (red), ends: ring lug and blade, crimped with the crimp tool". */
  readonly text: string;
}

/** A setting that the step sets, or sets back. */
export interface SettingView extends Shown {
  readonly id: string;
  readonly name: string;
  readonly from: string;
  readonly to: string;
}

/** An inspection, and what hangs on each outcome. */
export interface InspectionView extends Shown {
  readonly id: string;
  readonly name: string;
  readonly outcomes: readonly {
    readonly value: string;
    readonly name: string;
    /** The steps that are done then, and not otherwise; where there are none, the one that comes next. */
    readonly steps: readonly StepRef[];
  }[];
}

/** What a torque wrench is set to with a crowfoot on it: pass by pass, in both systems of units. */
export interface WrenchSetting {
  /** "13 mm crowfoot". */
  readonly crowfoot: string;
  /** With the crowfoot in line with the wrench. */
  readonly inLine: string;
  /** "25 N·m × 280 mm ÷ (280 mm + 40 mm)": how `inLine` is worked out. */
  readonly formula: string;
  /** With the crowfoot at a right angle to the wrench: the torque itself. */
  readonly square: string;
}

/** A torque that the step sets. */
export interface TorqueView extends Shown {
  /** What is tightened is other than in the latest release. */
  readonly changed: boolean;
  /** Of the fastener. */
  readonly id: string;
  /** "4 M8 flange nuts"; in a sequence, whose lines are numbered, "M8 flange nuts (4)". */
  readonly item: string;
  readonly torque: string;
  /** The state of the thread that the torque is for, or what grease would do; `null` where nothing is to be said. */
  readonly thread: string | null;
  readonly setting: WrenchSetting | null;
  readonly pattern: string | null;
  /** Its turn in a sequence, through all passes: "1"; `null` outside one. */
  readonly turn: string | null;
  /** What goes on the thread: "thread-lock". */
  readonly coat: string | null;
  readonly leftHand: boolean;
  readonly check: TypedCheck | null;
}
