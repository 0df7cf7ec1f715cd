import type { Markup } from '../../html/markup.ts';
import type { SignalWord } from '../../trade/signal-words.ts';
import type { Shown, SizedPicture, StepRef } from '../frame/shared-views.ts';
import type { PrintCheckView } from './print-check.ts';
import type { TypedCheck } from './typed-check.ts';

/** A block of a section or step, in the order of the text. */
export type BlockView = BlockKindView & {
  /** It reads otherwise than in the latest release. */
  readonly changed: boolean;
};

/** A block by its kind. */
export type BlockKindView =
  | (Shown & { readonly type: 'prose'; readonly html: Markup })
  | (MessageView & { readonly type: 'message' })
  | (Shown & {
      readonly type: 'note' | 'why' | 'owner';
      readonly title: Markup | null;
      readonly html: Markup;
    })
  | (FigureView & { readonly type: 'figure' })
  | (PhotoView & { readonly type: 'photo' })
  | (TemplateView & { readonly type: 'template' })
  | (Shown & {
      readonly type: 'prove';
      readonly title: Markup;
      readonly html: Markup;
      readonly readings: readonly ReadingView[];
    });

/** How the bar of a safety message reads. */
export interface SignalBar {
  readonly word: SignalWord;
  /** The word as its bar prints it. */
  readonly label: string;
  /** The safety alert symbol: never on NOTICE. */
  readonly alert: boolean;
}

/** A safety message where it stands. */
export interface MessageView extends Shown, SignalBar {
  readonly hazard: Markup;
  readonly body: Markup;
}

/** A picture with its lettered marks. */
export interface FigureView extends Shown {
  readonly caption: Markup | null;
  readonly alt: string;
  readonly picture: PictureView | null;
  readonly marks: MarksView | null;
  readonly key: readonly { readonly letter: string; readonly text: Markup }[];
  /** The order of tightening whose numbers stand on it; `null` for none. */
  readonly order: FigureOrderView | null;
  readonly body: Markup | null;
  /** "Left side shown". */
  readonly side: string | null;
  /** Where it is the picture of the step that this one undoes; `null` for the step's own. */
  readonly undoes: UndoneView | null;
}

/** An order of tightening, told under the picture that shows it. */
interface FigureOrderView {
  /** Id of what is tightened. */
  readonly of: string;
  readonly title: string;
  readonly lines: readonly string[];
  /** "Tightening order, clockwise from the upper left: 1, 3, 2, 4", for whoever cannot see the numbers. */
  readonly aloud: string;
}

/** Whose picture it is that a derived step shows. */
export interface UndoneView {
  readonly step: Omit<StepRef, keyof Shown> & { readonly href: string };
  /** Its arrows show the way back; else they show how the thing came off. */
  readonly turned: boolean;
}

/** A picture as a page shows it. */
export interface PictureView extends SizedPicture {
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

/** A photograph that is asked for. */
export interface PhotoView extends Shown {
  /** Counts from 1 within its step or section. */
  readonly number: number;
  readonly shows: Markup;
  readonly sides: ReadingView['sides'];
}

/** A cut template: what it is, its drawing, and the files that print it at full scale. */
export interface TemplateView extends Shown {
  readonly id: string;
  readonly title: string;
  readonly facts: readonly string[];
  readonly datums: readonly string[];
  readonly drawings: readonly TemplateDrawing[];
  readonly cuts: readonly TemplateCut[];
  readonly files: readonly TemplateFile[];
  /** `null` where there are no files to print. */
  readonly printCheck: PrintCheckView | null;
}

/** A reduced drawing of one side of a template, or of what some builds have of it. */
interface TemplateDrawing extends Shown {
  /** "Left side"; `null` for a template without sides. */
  readonly side: string | null;
  readonly drawing: Markup;
}

/** A line of the table of what a template cuts. */
export interface TemplateCut extends Shown {
  /** The id of the line on the page; `null` for what no text can name. */
  readonly id: string | null;
  /** Its letters on the drawing: "B" or "C–F". */
  readonly marks: string;
  readonly name: string;
  /** Of the line to cut; of an outline, overall. Empty where it could not be worked out. */
  readonly size: string;
  /** What goes through it, where that is stated. */
  readonly for: string | null;
}

/** A file of a template. */
export interface TemplateFile extends Shown {
  readonly href: string;
  /** Format, paper, side, and its builds where it is for some alone: "PDF, A4, left side". */
  readonly name: string;
  /** The same of a file of sheets without its format; `null` where it is a drawing for a machine. */
  readonly sheets: string | null;
  readonly detail: string;
}

/** A value to be measured and written down, once or for each side. */
export interface ReadingView extends Shown {
  readonly id: string;
  readonly name: string;
  /** In both units: "8–14 mm (5/16–35/64 in)". */
  readonly expect: string | null;
  readonly check: TypedCheck | null;
  /** Where it is taken on each side, both of them with what they are called; else one without words. */
  readonly sides: readonly { readonly side: 'left' | 'right' | ''; readonly name: string }[];
}
