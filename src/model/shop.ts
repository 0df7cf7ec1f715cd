import type { Span, Written } from '../source/span.ts';
import type { PaperName } from '../trade/paper.ts';
import type { TradeWords } from '../trade/words.ts';
import type { Block } from './block.ts';
import type { LinkFact, PictureFact } from './guide.ts';
import type { Condition, FastenerType, Part, Rating, Supply, Tool, Wear } from './item.ts';
import type { Prose } from './prose.ts';
import type { BuildSpace } from './when.ts';
import type { Zone } from './zone.ts';

/** What all guides of a workspace share: the shop, what it owns and its platforms. */
export interface Shop {
  readonly settings: ShopSettings;
  readonly crib: ReadonlyMap<string, Tool | Wear>;
  readonly fastenerTypes: ReadonlyMap<string, FastenerType>;
  /** The products that it uses up. */
  readonly supplies: ReadonlyMap<string, Supply>;
  readonly platforms: ReadonlyMap<string, Platform>;
  /** Pictures of tools, of what is worn and of kinds of fastener, by list and id: `tool bit-t25`, `fastener panel-screw`. */
  readonly ownPictures: ReadonlyMap<string, PictureFact>;
  /** Every file of the workspace that a guide may link to or show, by path, with its size in bytes. */
  readonly files: ReadonlyMap<string, number>;
}

/** What `shop.yaml` says. */
export interface ShopSettings {
  readonly name: string;
  /** Path from the workspace's root. */
  readonly logo: Written<string> | null;
  /** A CSS hexadecimal colour. */
  readonly accent: string | null;
  /** Where the site is published; printed in the QR code. */
  readonly address: string | null;
  /** Whom to ask about a job: a name, a telephone number. */
  readonly contact: string | null;
  readonly units: 'metric' | 'us';
  readonly papers: readonly PaperName[];
  /** How many technicians work on a job. */
  readonly crew: number;
  /** How a guide is printed that is not what was released of it. */
  readonly unreleased: 'plain' | 'draft';
  readonly signalWords: 'ansi' | 'iso';
  readonly words: TradeWords;
  readonly plainLanguage: PlainLanguage;
  readonly at: Span;
}

/** Which plain-language rules are off, by code. */
interface PlainLanguage {
  readonly off: ReadonlySet<string>;
}

/** A vehicle platform. */
export interface Platform {
  readonly id: string;
  readonly file: string;
  readonly title: Written<string>;
  readonly builds: BuildSpace;
  /** The shop's words, with its own over them. */
  readonly words: TradeWords;
  readonly parts: ReadonlyMap<string, Part>;
  /** States of the vehicle that its guides bring about and end. */
  readonly conditions: ReadonlyMap<string, Condition>;
  /** Limits of the vehicle that jobs load together, such as that of its roof. */
  readonly ratings: ReadonlyMap<string, Rating>;
  /** The named parts of its drawing, by id. */
  readonly zones: ReadonlyMap<string, Zone>;
  /** The first picture of its page, in which the zones lie. */
  readonly drawing: PictureFact | null;
  /** Its description. */
  readonly sections: readonly PlatformSection[];
  readonly links: readonly LinkFact[];
  readonly pictures: readonly PictureFact[];
}

/** What stands under one heading of a platform's page; the first may have no title. */
interface PlatformSection {
  readonly id: string | null;
  readonly title: Prose;
  readonly titleText: string;
  readonly blocks: readonly Block[];
  /** Ids of the parts that are declared under it. */
  readonly parts: readonly string[];
  /** Ids of the states that are declared under it. */
  readonly conditions: readonly string[];
  /** Ids of the ratings that are declared under it. */
  readonly ratings: readonly string[];
}
