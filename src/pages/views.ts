import type { Markup } from '../html/markup.ts';
import type { SignalWord } from '../trade/signal-words.ts';

/**
 * What the layouts read. Every field is text that the layout escapes, or {@link Markup}; nothing here needs
 * working out. A value that a page may lack is `null`, never missing, since layouts refuse unknown names.
 */

/** For which plans something stands: both `null` where it stands for all. */
export interface Shown {
  /** Positions of the plans, parted by spaces, for `data-plans`. */
  readonly plans: string | null;
  /** The same for people: "with front fog lamps". */
  readonly only: string | null;
}

/** A link within the site, relative to the page it stands on. */
export interface LinkView {
  readonly text: string;
  readonly href: string;
}

/** What every page has around its content. */
export interface FrameView {
  /** The page's title, as the browser's tab shows it. */
  readonly title: string;
  /** From the page to the site's root: empty, or `../` as often as needed. */
  readonly root: string;
  readonly shop: string;
  readonly logo: PictureFile | null;
  /** Style sheets, relative to the page. */
  readonly styles: readonly string[];
  /** Scripts of the page, relative to the page. */
  readonly scripts: readonly string[];
}

/** A picture file with its size in CSS pixels. */
export interface PictureFile {
  readonly src: string;
  readonly width: number;
  readonly height: number;
}

/** The first page: every platform with its guides. */
export interface IndexView {
  readonly frame: FrameView;
  readonly platforms: readonly { readonly link: LinkView; readonly guides: readonly GuideEntry[] }[];
}

/** A guide in a list. */
export interface GuideEntry {
  readonly link: LinkView;
  readonly partNumber: string | null;
  readonly revision: string | null;
  readonly updated: string | null;
  /** Hands-on time over all its builds. */
  readonly time: string;
  readonly people: string;
  /** "for every build", or the options that change it. */
  readonly builds: string;
}

/** A vehicle platform with the guides that there are for it. */
export interface PlatformView {
  readonly frame: FrameView;
  readonly title: string;
  readonly options: readonly { readonly name: string; readonly choices: string }[];
  /** What stands before its first heading. */
  readonly opening: readonly BlockView[];
  readonly sections: readonly {
    readonly id: string | null;
    readonly title: Markup;
    readonly blocks: readonly BlockView[];
  }[];
  readonly guides: readonly GuideEntry[];
}

/** One guide, whole. */
export interface GuideView {
  readonly frame: FrameView;
  readonly title: string;
  readonly platform: LinkView;
  readonly identity: readonly { readonly label: string; readonly value: string }[];
  readonly opening: readonly BlockView[];
  readonly picker: PickerView | null;
  readonly glance: readonly GlanceRow[];
  /** Steps that state no time, so that the figures leave them out. */
  readonly untimed: readonly StepRef[];
  /** False where the guide declares nothing that is counted, so that nothing proves that nothing is left over. */
  readonly accounted: boolean;
  readonly safety: readonly SafetyGroup[];
  readonly sections: readonly SectionView[];
  readonly sheets: SheetsView;
  readonly footnotes: Markup | null;
  /** The table by which the page's script shows one build: see `pick-table.ts`. */
  readonly table: Markup;
}

/** Text that may differ between plans. */
export interface VaryingView extends Shown {
  readonly text: string;
}

/** How a technician says which vehicle stands in the bay. */
export interface PickerView {
  readonly options: readonly {
    readonly id: string;
    readonly name: string;
    readonly choices: readonly { readonly value: string; readonly name: string }[];
  }[];
  /** Every plan in words, for a page without its script. */
  readonly plans: readonly VaryingView[];
}

/** A step named elsewhere on the page. Its number is that of the page on which all builds stand. */
export interface StepRef extends Shown {
  readonly id: string;
  readonly number: number;
  readonly title: string;
}

/** A figure of the job, one line for each set of builds in which it differs, and the steps that it comes from. */
export interface GlanceRow {
  readonly label: string;
  readonly lines: readonly VaryingView[];
  readonly steps: readonly StepRef[];
}

/** How the bar of a safety message reads. */
export interface SignalBar {
  readonly word: SignalWord;
  /** The word as its bar prints it. */
  readonly label: string;
  /** The safety alert symbol: never on NOTICE. */
  readonly alert: boolean;
}

/** The messages of one signal word, gathered in front of the job. */
export interface SafetyGroup extends SignalBar {
  readonly entries: readonly SafetyEntry[];
}

/** A message in that list, with the places where it stands. */
export interface SafetyEntry extends Shown {
  readonly hazard: Markup;
  readonly body: Markup;
  readonly steps: readonly StepRef[];
  readonly sections: readonly LinkView[];
}

/** A safety message where it stands. */
export interface MessageView extends Shown, SignalBar {
  readonly hazard: Markup;
  readonly body: Markup;
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
  readonly id: string;
  readonly name: string;
  /** What else is said about it: the tools that serve as well, the thread and torque of a nut. */
  readonly detail: string | null;
  readonly amount: readonly VaryingView[];
  /** What of a supply the steps use. */
  readonly used: readonly VaryingView[];
  readonly first: readonly StepRef[];
}

/** A part, fastener or connector of the vehicle that the job touches. */
export interface ComesOffRow extends Shown {
  /** The item's own id; `id` is that of its row. */
  readonly item: string;
  readonly id: string;
  readonly name: string;
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

/** One step. */
export interface StepView extends Shown {
  readonly id: string;
  readonly number: number;
  readonly title: Markup;
  /** Sides, time and people, each in words. */
  readonly facts: readonly string[];
  readonly needs: readonly string[];
  readonly blocks: readonly BlockView[];
  readonly tools: readonly VaryingView[];
  readonly wear: readonly VaryingView[];
  readonly torques: readonly TorqueView[];
  /** Whether anything stands in the lines under the step. */
  readonly hasLines: boolean;
  readonly readings: readonly ReadingView[];
  readonly bench: readonly BenchLine[];
  readonly wait: string | null;
  readonly signOff: boolean;
  readonly anyOrder: boolean;
}

/** One line of what the vehicle and the bench are like when a step is done. */
export interface BenchLine extends VaryingView {
  readonly label: string;
}

/** A torque that the step sets. */
export interface TorqueView extends Shown {
  /** "4 M8 flange nuts". */
  readonly item: string;
  readonly torque: string;
  readonly pattern: string | null;
}

/** What is filled in during the job, on paper. */
export interface SheetsView {
  readonly torques: readonly TorqueRow[];
  readonly bags: readonly BagView[];
  readonly counts: readonly CountRow[];
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
  readonly back: number;
  /** What does not go back: "2 discarded, 1 spare". */
  readonly elsewhere: string;
}

/** A step that a second person signs. */
export interface SignOffRow extends Shown {
  readonly step: StepRef;
}

/** A value to be measured and written down, once or for each side. */
export interface ReadingView extends Shown {
  readonly id: string;
  readonly name: string;
  readonly expect: string | null;
}

/** A block of a section or step, in the order of the text. */
export type BlockView =
  | (Shown & { readonly type: 'prose'; readonly html: Markup })
  | (MessageView & { readonly type: 'message' })
  | (Shown & {
      readonly type: 'note' | 'why' | 'owner';
      readonly title: Markup | null;
      readonly html: Markup;
    })
  | (FigureView & { readonly type: 'figure' })
  | (TemplateView & { readonly type: 'template' })
  | (Shown & {
      readonly type: 'prove';
      readonly title: Markup;
      readonly html: Markup;
      readonly readings: readonly ReadingView[];
    });

/** A picture with its lettered marks. */
export interface FigureView extends Shown {
  readonly caption: Markup | null;
  readonly alt: string;
  readonly picture: PictureView | null;
  readonly marks: MarksView | null;
  readonly key: readonly { readonly letter: string; readonly text: Markup }[];
  readonly body: Markup | null;
  /** "Left side shown". */
  readonly side: string | null;
}

/** A picture as a page shows it. */
export interface PictureView extends PictureFile {
  readonly sources: readonly { readonly type: string; readonly srcset: string }[];
  /** A part of it, enlarged; `null` where none is asked for. */
  readonly detail: PictureView | null;
}

/** The lettered marks over a picture. */
export interface MarksView {
  /** An SVG that covers the picture and the margins with its letters. */
  readonly overlay: Markup;
  /** The sides that have such a margin, as classes: `marked-above marked-left`. */
  readonly sides: string;
}

/** A cut template: what it is, its drawing, and the files that print it at full scale. */
export interface TemplateView extends Shown {
  readonly id: string;
  readonly title: string;
  readonly facts: readonly string[];
  readonly datums: readonly string[];
  readonly drawings: readonly TemplateDrawing[];
  readonly files: readonly TemplateFile[];
}

/** A reduced drawing of one side of a template. */
export interface TemplateDrawing {
  /** "Left side"; `null` for a template without sides. */
  readonly side: string | null;
  readonly drawing: Markup;
}

/** A file of a template. */
export interface TemplateFile {
  readonly href: string;
  readonly name: string;
  readonly detail: string;
}
