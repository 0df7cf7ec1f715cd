import type { LedgerData } from '../../job/dry-run/portable.ts';
import type { TradeWords } from '../../trade/words.ts';

/** What a rehearsal of a guide is made from, beside its page: the ledger, and how what is in it is called. */
export interface RehearsalData {
  readonly guide: string;
  readonly title: string;
  /** "revision 3, 2 October 2026"; empty where the guide states neither. */
  readonly edition: string;
  readonly fingerprint: string;
  readonly words: Pick<TradeWords, 'vehicle' | 'left' | 'right'>;
  readonly plans: readonly RehearsedPlan[];
  readonly ledger: LedgerData;
  /** How each thing is called, by id. */
  readonly names: { readonly [id: string]: Name };
  readonly steps: { readonly [id: string]: RehearsedStep };
  /** The drives of its fasteners, as an author writes them. */
  readonly drives: readonly string[];
  /** The title of each scene of the ledger. */
  readonly titles: readonly string[];
  /** For each action of the ledger. */
  readonly actions: readonly RehearsedAction[];
}

/** A thing within a sentence, one of it and several. */
export interface Name {
  readonly one: string;
  readonly many: string;
}

/** What is particular to the builds that read alike. */
interface RehearsedPlan {
  readonly statement: string;
  /** The number of each step that is done. */
  readonly numbers: { readonly [step: string]: number };
  /** What is laid out, and the step that needs it first. */
  readonly layOut: readonly LaidOut[];
  /** What each step has in hand of it. */
  readonly uses: { readonly [step: string]: readonly string[] };
  /** Likely minutes of each step that states a time, both sides together. */
  readonly minutes: { readonly [step: string]: number };
  /** The steps after which each step waits, and for how many minutes: what was put on dries or cures meanwhile. */
  readonly waits: { readonly [step: string]: readonly Wait[] };
}

/** Time that must pass after a step. */
export interface Wait {
  readonly step: string;
  readonly minutes: number;
}

/** A tool, a supply or something to wear. */
export interface LaidOut {
  readonly id: string;
  readonly kind: 'tool' | 'supply' | 'wear';
  readonly label: string;
  readonly step: string | null;
  /** Tools that serve as well. */
  readonly or: readonly string[];
}

/** A step as it is named, and known again in another edition. */
interface RehearsedStep {
  readonly title: string;
  readonly fingerprint: string;
  /** Steps that must be done before it, for a reason that the ledger cannot know. */
  readonly after: readonly string[];
  readonly people: number;
  /** Minutes that nobody works after it. */
  readonly wait: number;
  /** Whether a message of it tells of an injury: `danger`, `warning` or `caution`. */
  readonly hurts: boolean;
}

/** An action as it is chosen and asked about. */
interface RehearsedAction {
  /** As a sentence, without its torque and its side: both may be asked. */
  readonly text: string;
  readonly asks: readonly Question[];
  /** Its place in an order of tightening across several fasteners. */
  readonly sequence: { readonly label: string; readonly place: number } | null;
}

/** A question with one right answer. */
export interface Question {
  readonly about: 'tool' | 'torque' | 'order' | 'side';
  readonly ask: string;
  readonly options: readonly string[];
  /** Position of the right one. */
  readonly right: number;
  /** What a wrong answer is told. */
  readonly why: string;
}
