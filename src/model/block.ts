import type { Span, Written } from '../source/span.ts';
import type { SignalWord } from '../trade/signal-words.ts';
import type { Estimate } from '../units/estimate.ts';
import type { Ref } from './inline.ts';
import type { Prose } from './prose.ts';
import type { When } from './when.ts';

/** What a section or a step is made of, in the order of the text. */
export type Block =
  | ProseBlock
  | SafetyMessage
  | NoteBlock
  | RefitNote
  | Figure
  | Photo
  | TemplatePlace
  | Prove;

/** Ordinary Markdown: a paragraph, list, table. */
export interface ProseBlock {
  readonly type: 'prose';
  readonly content: Prose;
  readonly at: Span;
}

/** A safety message: the label names the hazard, the text says what happens and how to avoid it. */
export interface SafetyMessage {
  readonly type: 'message';
  readonly word: SignalWord;
  readonly hazard: Prose;
  readonly body: Prose;
  readonly when: Written<When> | null;
  readonly at: Span;
}

/** `:::note` informs, `:::why` explains to trainees, `:::owner` goes on the hand-over sheet. */
export interface NoteBlock {
  readonly type: 'note' | 'why' | 'owner';
  readonly title: Prose | null;
  readonly body: Prose;
  readonly when: Written<When> | null;
  readonly at: Span;
}

/** What is said when the step is reversed; printed only there. */
interface RefitNote {
  readonly type: 'refit-note';
  readonly body: Prose;
  readonly when: Written<When> | null;
  readonly at: Span;
}

/** A picture with its caption and its lettered marks. */
export interface Figure {
  readonly type: 'figure';
  readonly caption: Prose;
  /** Path as written, from the file that holds the figure. */
  readonly src: Written<string> | null;
  /** Path from the workspace's root; `null` where `src` is missing or leaves the workspace. */
  readonly path: string | null;
  readonly alt: Written<string> | null;
  readonly shows: Written<'left' | 'right'> | null;
  readonly crop: Written<PictureBox> | null;
  readonly blur: readonly Written<PictureBox>[];
  readonly zoom: Written<PictureBox> | null;
  readonly marks: readonly FigureMark[];
  /** Text in the figure besides the marks' key. */
  readonly body: Prose;
  readonly when: Written<When> | null;
  readonly at: Span;
}

/** A part of a picture as fractions (0 to 1) of its upright, uncropped width and height. */
export interface PictureBox {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** A place in a picture as fractions (0 to 1) of its upright, uncropped width and height. */
export interface PicturePlace {
  readonly x: number;
  readonly y: number;
}

/** A letter on a picture and what it stands for. */
export interface FigureMark {
  readonly letter: string;
  /** Fractions (0 to 1) of the upright, uncropped picture, from its upper left; `null` where unreadable. */
  readonly point: PicturePlace | null;
  /** Where the others of its kind are; no line leads there. */
  readonly also: readonly PicturePlace[];
  /** The key's text. */
  readonly text: Prose;
  readonly at: Span;
}

/** A photograph that the technician takes as evidence of the step, of each side where it is done on each. */
export interface Photo {
  readonly type: 'photo';
  /** What it must show. */
  readonly shows: Prose;
  readonly when: Written<When> | null;
  readonly at: Span;
}

/** Where the drawing of a cut template stands in the text. */
interface TemplatePlace {
  readonly type: 'template';
  readonly template: Ref;
  readonly when: Written<When> | null;
  readonly at: Span;
}

/** What is tried and measured at the end. */
export interface Prove {
  readonly type: 'prove';
  readonly title: Prose;
  readonly body: Prose;
  /** Conditions that must hold, and measures that must have been taken, when it begins. */
  readonly needs: readonly Ref[];
  readonly time: Written<Estimate> | null;
  readonly when: Written<When> | null;
  readonly at: Span;
}
