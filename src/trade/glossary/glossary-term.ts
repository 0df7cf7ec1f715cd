import type { Drive } from '../drives.ts';
import type { SignalWord } from '../signal-words.ts';

/** What every entry of the glossary has. */
interface Entry {
  /** Its anchor on the page. */
  readonly id: string;
  readonly term: string;
  /** What it is and what it is for, in one or two sentences. */
  readonly meaning: string;
  /** The standard that fixes its shape or its use; `null` where there is none or we know of none. */
  readonly standard: string | null;
  /** Where we read that the standard is about this; `null` where its number is from memory, which the page says. */
  readonly readIn: string | null;
  /** What else the trade calls it. */
  readonly synonyms: readonly string[];
  /** Makers' names that became words: search finds it by them, and no page prints them. */
  readonly tradeMarks?: readonly string[];
}

/** A way in which a tool takes hold of a fastener. */
export interface DriveTerm extends Entry {
  readonly kind: 'drive';
  /** One of that drive, to be drawn. */
  readonly example: Drive;
}

/** The shapes of fastener that have an entry. */
export type FastenerShape =
  | 'hexagon-head'
  | 'flange-head'
  | 'socket-head'
  | 'pan-head'
  | 'countersunk'
  | 'nut'
  | 'flange-nut'
  | 'rivet-nut'
  | 'stud'
  | 'washer'
  | 'push-in'
  | 'pull-out'
  | 'spring-clip';

/** A kind of fastener by its shape. */
export interface FastenerTerm extends Entry {
  readonly kind: 'fastener';
  readonly shape: FastenerShape;
}

/** A word in front of a safety message. */
interface SignalTerm extends Entry {
  readonly kind: 'signal-word';
  readonly word: SignalWord;
}

/** An entry of the glossary. */
export type GlossaryTerm = DriveTerm | FastenerTerm | SignalTerm;
