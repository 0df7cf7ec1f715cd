import type { Markup } from '../../html/markup.ts';
import type { FrameView, LinkView, Shown, StepRef, VaryingView } from '../frame/shared-views.ts';
import type { AboutRow } from '../overview/about.ts';
import type { ContentsRow } from '../overview/contents.ts';
import type { CourseView } from '../overview/course.ts';
import type { CoverView } from '../overview/cover.ts';
import type { ComesOffRow, GatherView, LimitRow } from '../overview/list-views.ts';
import type { ScheduleView } from '../overview/schedule.ts';
import type { StandingView } from '../overview/standing.ts';
import type { VehicleView } from '../overview/vehicle.ts';
import type { VisitView } from '../overview/visit.ts';
import type { BlockView, SignalBar } from '../steps/block-views.ts';
import type { StepView } from '../steps/step-views.ts';
import type { HandOverView } from './hand-over.ts';
import type { SheetsView } from './sheet-views.ts';

/** One guide, whole. */
export interface GuideView {
  readonly frame: FrameView;
  readonly title: string;
  readonly platform: LinkView;
  readonly identity: readonly { readonly label: string; readonly value: string }[];
  /** How it stands to its latest release; `null` where it was never released. */
  readonly standing: StandingView | null;
  /** Printed across each sheet of a guide that a shop does not stand behind: "DRAFT"; else `null`. */
  readonly draft: string | null;
  readonly opening: readonly BlockView[];
  readonly picker: PickerView | null;
  /** Printed alone. */
  readonly cover: CoverView;
  /** Of a long print; empty for a short one. */
  readonly contents: readonly ContentsRow[];
  /** Printed on the cover and, in part, on the owner's sheet. */
  readonly about: readonly AboutRow[];
  readonly glance: readonly GlanceRow[];
  /** The drawing of the vehicle with what is done in each zone; `null` for a platform without zones. */
  readonly vehicle: VehicleView | null;
  /** How several guides became one job; `null` for a guide of an author. */
  readonly visit: VisitView | null;
  /** Steps that state no time, so that the figures leave them out. */
  readonly untimed: readonly StepRef[];
  /** False where the guide declares nothing that is counted, so that nothing proves that nothing is left over. */
  readonly accounted: boolean;
  readonly safety: readonly SafetyGroup[];
  /** What each signal word of the shop's scheme means. */
  readonly signalKey: readonly SignalKeyRow[];
  readonly sections: readonly SectionView[];
  /** How the time runs; equal schedules of several builds once. Empty where no step states a time. */
  readonly schedules: readonly ScheduleView[];
  /** What is off, unplugged or not tight, from which step until which, a state at a time. */
  readonly course: readonly CourseView[];
  readonly sheets: SheetsView;
  /** Printed alone. */
  readonly handOver: HandOverView;
  readonly footnotes: Markup | null;
  /** The table by which the page's script shows one build: see `pick-table.ts`. */
  readonly table: Markup;
  /** What the page's script keeps progress by: see `bay.ts`. */
  readonly bay: Markup;
  /** The page on which it is rehearsed; `null` where the guide stands alone. */
  readonly rehearsal: LinkView | null;
  /** Its card set; `null` where the guide stands alone. */
  readonly cards: LinkView | null;
  /** What the counter and the cart need, as a table for other programs; `null` where the guide stands alone. */
  readonly pickList: LinkView | null;
  /** The guide as one file that can be handed on; `null` on that file itself. */
  readonly alone: LinkView | null;
}

/** How a technician says which vehicle stands in the bay. */
export interface PickerView {
  /** Facts of the vehicle, then wishes of the customer; titled where both are asked. */
  readonly groups: readonly { readonly title: string | null; readonly options: readonly PickerOption[] }[];
  /** Every plan in words, for a page without its script. */
  readonly plans: readonly VaryingView[];
}

/** A question of the picker. */
interface PickerOption {
  readonly id: string;
  readonly name: string;
  readonly choices: readonly { readonly value: string; readonly name: string }[];
}

/** A figure of the job, one line for each set of builds in which it differs, and the steps that it comes from. */
export interface GlanceRow {
  readonly label: string;
  readonly lines: readonly VaryingView[];
  /** What is said of it in smaller letters. */
  readonly more: readonly VaryingView[];
  readonly steps: readonly StepRef[];
}

/** The messages of one signal word, gathered in front of the job. */
export interface SafetyGroup extends SignalBar {
  readonly entries: readonly SafetyEntry[];
}

/** A line of the key of the signal words. */
export interface SignalKeyRow {
  readonly word: string;
  readonly meaning: string;
}

/** A message in that list, with the places where it stands. */
export interface SafetyEntry extends Shown {
  readonly hazard: Markup;
  readonly body: Markup;
  readonly steps: readonly StepRef[];
  readonly sections: readonly LinkView[];
}

/** What stands under one heading. */
export interface SectionView extends Shown {
  readonly id: string;
  readonly title: Markup;
  /** Level of the page's heading, 2 to 6. */
  readonly level: number;
  /** True where nothing stands under the heading: only its anchor is printed. */
  readonly empty: boolean;
  readonly intro: readonly BlockView[];
  readonly gather: GatherView | null;
  readonly comesOff: readonly ComesOffRow[] | null;
  readonly limits: readonly LimitRow[] | null;
  readonly time: readonly VaryingView[];
  readonly steps: readonly StepView[];
}
