import type { Span, Written } from '../source/span.ts';
import type { TradeWords } from '../trade/words.ts';
import type { Estimate } from '../units/estimate.ts';
import type { Minutes } from '../units/quantity.ts';
import type { Block, Figure } from './block.ts';
import type { CutTemplate } from './cut-template.ts';
import type { Ref } from './inline.ts';
import type { Item, Side } from './item.ts';
import type { Origin } from './origin.ts';
import type { Prose } from './prose.ts';
import type { Sequence } from './sequence.ts';
import type { Visit } from './visit.ts';
import type { BuildSpace, When } from './when.ts';
import type { Zone } from './zone.ts';

/** One guide: a job on a platform, complete, with procedures placed and reversals worked out. */
export interface Guide {
  /** The name of its folder; of a visit, that of its file. */
  readonly id: string;
  readonly file: string;
  readonly title: Written<string>;
  readonly platform: Ref;
  readonly partNumber: Written<string> | null;
  readonly revision: Written<string> | null;
  /** ISO date as written. */
  readonly updated: Written<string> | null;
  /** What the fitted part is meant for. */
  readonly meantFor: Written<string> | null;
  /** What it must not be used for. */
  readonly notFor: Written<string> | null;
  /** Who may do the work. */
  readonly doneBy: Written<string> | null;
  /** What becomes of what was taken off: returned, recycled, hazardous waste. */
  readonly takenOff: Written<string> | null;
  /** What has changed since the last revision. */
  readonly changes: Written<string> | null;
  readonly builds: BuildSpace;
  /** What the platform's vehicles, their sides and their registration are called. */
  readonly words: TradeWords;
  /** The zones of the platform's drawing, by id; empty where it has none. */
  readonly zones: ReadonlyMap<string, Zone>;
  /** Every item by id, in the order of declaration. */
  readonly items: ReadonlyMap<string, Item>;
  readonly templates: ReadonlyMap<string, CutTemplate>;
  /** Orders of tightening across several fasteners, by id. */
  readonly sequences: ReadonlyMap<string, Sequence>;
  /** What the guide says it does without. */
  readonly nones: readonly None[];
  /** The box's own packing list, by kit id; a lot that the guide declares in parts stands under all their ids. */
  readonly contents: ReadonlyMap<string, PackedCount> | null;
  readonly sections: readonly Section[];
  /** Text before the first heading. */
  readonly opening: readonly Block[];
  readonly footnotes: Prose;
  readonly links: readonly LinkFact[];
  readonly pictures: readonly PictureFact[];
  /** Every anchor of the page: ids of sections, steps and templates. */
  readonly anchors: ReadonlySet<string>;
  /** Where it stands for several guides on one vehicle, planned as one job; `null` for a guide of an author. */
  readonly visit: Visit | null;
}

/** The lists that a guide must not leave silent. */
export type NoneKind = 'wear' | 'tools' | 'supplies' | 'kit' | 'conditions';

/** `::none{of=…}`: none is needed, and that is on purpose. */
export interface None {
  readonly of: NoneKind;
  readonly at: Span;
}

/** What stands under one heading. */
export interface Section {
  readonly id: string;
  readonly idAt: Span;
  readonly title: Prose;
  readonly titleText: string;
  readonly depth: 1 | 2 | 3 | 4 | 5 | 6;
  /** What stands before its first step. */
  readonly intro: readonly Block[];
  readonly steps: readonly Step[];
  readonly at: Span;
}

/** How many of one thing the box holds, by its own packing list. */
interface PackedCount extends Written<number> {
  readonly idAt: Span;
}

/** One step: what is done without a break, numbered and ticked. */
export interface Step {
  readonly id: string;
  readonly idAt: Span;
  readonly title: Prose;
  readonly titleText: string;
  /** What the derived step is called when this one is reversed. */
  readonly refitTitle: string | null;
  readonly side: Written<Side> | null;
  /** Hands-on time, per side and each time. */
  readonly time: Written<Estimate> | null;
  /** How often it is done; with {@link until}, at most so often. */
  readonly times: Written<number> | null;
  /** The reading that ends the repeating once it is as expected. */
  readonly until: Ref | null;
  /** Time nobody works. */
  readonly wait: Written<Minutes> | null;
  /** How many pairs of hands; 1 where nothing is written. */
  readonly people: number;
  readonly signOff: boolean;
  /** The job ends with it. */
  readonly stop: boolean;
  /** It may change places with others of its section, as far as the ledger and `after` allow. */
  readonly anyOrder: boolean;
  /** Earlier steps that must be done first, for a reason that the ledger cannot know. */
  readonly after: readonly Ref[];
  readonly needs: readonly Ref[];
  /** Where it is done, where the author says so; else what it handles tells. */
  readonly zones: StepZones;
  readonly when: Written<When> | null;
  readonly blocks: readonly Block[];
  readonly origins: readonly Origin[];
  readonly unknown: ReadonlySet<string>;
  readonly at: Span;
}

/** Zones of the platform's drawing, or `off` for work that is done off the vehicle. */
export type StepZones = readonly Ref[] | 'off';

/** A link in the text, and what became of it. */
export interface LinkFact {
  readonly href: string;
  readonly at: Span;
}

/** A picture that the text shows, by `:::figure` or by Markdown, or the own picture of a thing. */
export interface PictureFact {
  /** Path from the workspace's root; `null` where it leaves the workspace. */
  readonly path: string | null;
  readonly src: Written<string>;
  readonly alt: Written<string> | null;
  readonly figure: Figure | null;
  readonly at: Span;
}
