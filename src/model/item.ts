import type { Span, Written } from '../source/span.ts';
import type { Drive } from '../trade/drives.ts';
import type { Thread } from '../trade/thread.ts';
import type { StatedFriction } from '../trade/torque.ts';
import type { Wire } from '../trade/wire.ts';
import type { Quantity, QuantityRange } from '../units/quantity.ts';
import type { Recheck } from '../units/recheck.ts';
import type { TorqueSpec } from '../units/torque.ts';
import type { PictureFact } from './guide.ts';
import type { Ref } from './inline.ts';
import type { Origin } from './origin.ts';
import type { When } from './when.ts';

/** Everything that a guide declares and counts, by kind. */
export type Item =
  | Wear
  | Tool
  | Supply
  | KitItem
  | Part
  | Fastener
  | Connector
  | Condition
  | Measure
  | Setting
  | InspectionItem
  | Rating
  | Circuit;

/** The kinds of item. */
export type ItemKind = Item['kind'];

/** On which side of the vehicle, as seen sitting forward; `each` is one on the left and one on the right. */
export type Side = 'left' | 'right' | 'each';

/** Work that asks for special care. */
export type WorkClass = 'airbag' | 'brakes' | 'seat-belt' | 'high-voltage' | 'towing';

/** What an item is called. */
export interface Noun {
  /** As declared: "Torque wrench, 10–60 N·m". */
  readonly label: string;
  /** For use within a sentence: "torque wrench". */
  readonly singular: string;
  /** "torque wrenches", from `plural=` or the singular and an s. */
  readonly plural: string;
}

interface ItemBase<K extends string> {
  readonly kind: K;
  readonly id: string;
  readonly noun: Noun;
  /** The declaration: in the guide, the procedure it places, or the platform. */
  readonly at: Span;
  readonly idAt: Span;
  readonly when: Written<When> | null;
  /** Tools of all its actions, from `with=`. */
  readonly with: readonly Ref[];
  /** Conditions that must hold, and measures that must have been taken, before it is acted on. */
  readonly needs: readonly Ref[];
  readonly work: Written<WorkClass> | null;
  /** While it is off, apart, loose, aside or holds, the vehicle must not be moved. */
  readonly immobile: boolean;
  /** The zones of the platform's drawing in which it lies, where the author names them. */
  readonly zones: readonly Ref[];
  /** What it looks like; `null` where its declaration names no picture, though the shop's lists may have one. */
  readonly picture: PictureFact | null;
  /** How it came into the guide, outermost first; empty for what the guide's own file declares. */
  readonly origins: readonly Origin[];
  /** Attributes that were written but could not be read; rules stay silent about what depends on them. */
  readonly unknown: ReadonlySet<string>;
}

/** Protective equipment. */
export interface Wear extends ItemBase<'wear'> {
  readonly synonyms: readonly string[];
}

/** A tool, from the crib or declared in the guide. */
export interface Tool extends ItemBase<'tool'> {
  readonly inCrib: boolean;
  /** How many are within reach; 1 where nothing is written. */
  readonly atHand: number;
  readonly synonyms: readonly string[];
  readonly drive: Written<Drive> | null;
  readonly range: Written<QuantityRange<'torque'>> | null;
  readonly cutterRadius: Written<Quantity<'length'>> | null;
  readonly diameter: Written<Quantity<'length'>> | null;
  /** Of a crowfoot: from the middle of its square to that of the fastener. */
  readonly offset: Written<Quantity<'length'>> | null;
  /** Of a torque wrench: from the middle of its grip to that of its square. */
  readonly length: Written<Quantity<'length'>> | null;
  /** The sections of wire on which it crimps terminals. */
  readonly crimps: Written<QuantityRange<'area'>> | null;
  /** It solders. */
  readonly solders: boolean;
  /** Tools that serve as well. */
  readonly or: readonly Ref[];
}

/** How far a product goes: so much area or length to so much of it. */
export interface Yield {
  readonly does: Quantity<'area' | 'length'>;
  readonly of: Quantity;
}

/** What a product does by itself once it is put on, and how far it goes. */
interface Product {
  /** From putting it on until something may be put over it or against it. */
  readonly dries: Written<Quantity<'time'>> | null;
  /** From putting it on until it holds, or keeps water out. */
  readonly cures: Written<Quantity<'time'>> | null;
  /** From putting it on until what it is for must be in place. */
  readonly openTime: Written<Quantity<'time'>> | null;
  readonly yields: Written<Yield> | null;
  /** How much is in one package. */
  readonly pack: Written<Quantity> | null;
}

/** Something that is used up. */
export interface Supply extends ItemBase<'supply'>, Product {
  readonly synonyms: readonly string[];
  readonly quantity: Written<Quantity> | null;
  /** It must come off again. */
  readonly temporary: boolean;
  /** The part or fastener that it takes the place of, once applied. */
  readonly replaces: Ref | null;
  /** What it makes of a thread that it is put on. */
  readonly friction: Written<StatedFriction> | null;
}

/** What an item has that can be counted and may stand on both sides. */
export interface Counted {
  /** How many, per side; 1 where nothing is written. */
  readonly count: Written<number>;
  /** Whether the author wrote the count. */
  readonly countWritten: boolean;
  readonly side: Written<Side> | null;
}

/** What a fastener has, also one that comes in the box. */
export interface Fixing extends Counted {
  readonly drive: Written<Drive> | null;
  /** Name of the standard that its width across flats follows. */
  readonly standard: Written<string> | null;
  readonly thread: Written<Thread> | null;
  /** Property class or grade as written: `8`, `8.8`, `grade 5`. */
  readonly grade: Written<string> | null;
  readonly torque: Written<TorqueSpec> | null;
  /** The state of its thread; `null` is as delivered. */
  readonly friction: Written<StatedFriction> | null;
  readonly pattern: Written<'cross' | 'circle' | 'row'> | null;
  readonly holds: readonly Ref[];
  readonly reuse: boolean;
  readonly replaces: Ref | null;
  /** The part comes off once the fastener is loosened. */
  readonly freeWhenLoosened: boolean;
  /** What lies on it, from the head to the end of the thread: washers, spacers, what is clamped, the nut. */
  readonly stack: readonly Ref[];
  /** Along its axis: of a bolt from under its head, of a washer or a spacer its thickness. */
  readonly length: Written<Quantity<'length'>> | null;
  /** The supply that goes on its thread before it goes in. */
  readonly coat: Ref | null;
  /** It tightens anticlockwise. */
  readonly leftHand: boolean;
  /** No two of them, and of those that hold the same thing, may be loose together. */
  readonly oneByOne: boolean;
  /** When the owner has it looked at again. */
  readonly recheck: Written<Recheck> | null;
}

/** Something that comes in the accessory's box. */
export interface KitItem extends ItemBase<'kit'>, Fixing {
  /** How many may remain at the end. */
  readonly spare: Written<number> | null;
  readonly covers: readonly Ref[];
  /** Places of the vehicle that it takes for good: a fuse way, an earth point. */
  readonly takes: readonly Ref[];
  /** The reading or inspection by which so many are taken as are wanted; the rest is left over by right. */
  readonly chosenBy: Ref | null;
  /** It has a drive, a thread or a torque, holds something, or replaces a fastener. */
  readonly isFastener: boolean;
}

/** A part of the vehicle. */
export interface Part extends ItemBase<'part'>, Counted {
  /** Along the bolts that go through it. */
  readonly length: Written<Quantity<'length'>> | null;
  readonly covers: readonly Ref[];
  readonly fromPlatform: boolean;
}

/** A fastener of the vehicle. */
export interface Fastener extends ItemBase<'fastener'>, Fixing {
  /** The fastener type, from the workspace's list. */
  readonly type: Ref | null;
  readonly spare: Written<number> | null;
}

/** An electrical connector, or another coupling, that mates and comes apart. */
export interface Connector extends ItemBase<'connector'>, Counted {
  /** The parts or kit items it sits on. */
  readonly on: readonly Ref[];
  /** Places of the vehicle that it takes for good: a fuse way, an earth point, a spare plug. */
  readonly takes: readonly Ref[];
}

/** A state of the vehicle that work asks for, such as an isolated battery. */
export interface Condition extends ItemBase<'condition'> {
  /** It need not be cleared at the end (a cure). */
  readonly stays: boolean;
  /** What is told where it is set: "unbolt the battery negative lead". */
  readonly setWords: string | null;
  /** What is told where it is cleared, also in a refit that is worked out. */
  readonly clearWords: string | null;
  readonly fromPlatform: boolean;
}

/** Something to be measured. */
export interface Measure extends ItemBase<'measure'> {
  readonly expect: Written<QuantityRange> | null;
  /** What it may read as where that is told in words: "green", "no fault stored"; empty for a quantity. */
  readonly words: readonly string[];
  /** When the owner has it measured again. */
  readonly recheck: Written<Recheck> | null;
}

/** Something that is set to another value, such as a coding in a control unit. */
export interface Setting extends ItemBase<'setting'> {
  /** As the vehicle comes. */
  readonly from: Written<string>;
  readonly to: Written<string>;
}

/** Something that is looked at; steps and words hang on what is found as they hang on an option. */
export interface InspectionItem extends ItemBase<'inspection'> {
  /** What may be found, as ids. */
  readonly outcomes: readonly Ref[];
}

/** A limit that one link of what carries or tows is rated for, or the load that the job claims. */
export interface Rating extends ItemBase<'rating'> {
  readonly limit: Written<Quantity> | null;
  readonly claim: Written<Quantity> | null;
  readonly fromPlatform: boolean;
}

/** A feed: what it carries, over what wire, behind which fuse. */
export interface Circuit extends ItemBase<'circuit'> {
  readonly load: Written<Quantity<'current'>> | null;
  /** One way; the return is as long. */
  readonly length: Written<Quantity<'length'>> | null;
  readonly wire: Written<Wire> | null;
  readonly fuse: Written<Quantity<'current'>> | null;
  readonly voltage: Written<Quantity<'voltage'>> | null;
  /** Of its insulation. */
  readonly colour: Written<string> | null;
  /** What its one or two ends get, from the box or the supplies. */
  readonly ends: readonly Ref[];
}

/** A kind of fastener that the workspace knows. */
export interface FastenerType {
  readonly id: string;
  readonly noun: Noun;
  readonly drive: Written<Drive> | null;
  /** Name of the standard that its width across flats follows. */
  readonly standard: Written<string> | null;
  readonly reuse: boolean;
  /** How it releases, in a sentence. */
  readonly release: string | null;
  readonly synonyms: readonly string[];
  /** What was written but could not be read. */
  readonly unknown: ReadonlySet<string>;
  readonly at: Span;
}
