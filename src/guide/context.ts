import type { FastenerType, Supply, Tool, Wear } from '../model/item.ts';
import type { Platform } from '../model/shop.ts';
import type { SourceFile } from '../source/source-file.ts';
import type { TradeWords } from '../trade/words.ts';

/** What a guide can draw on: all that the workspace declares outside it. */
export interface ReadingContext {
  readonly crib: ReadonlyMap<string, Tool | Wear>;
  readonly fastenerTypes: ReadonlyMap<string, FastenerType>;
  readonly supplies: ReadonlyMap<string, Supply>;
  readonly platforms: ReadonlyMap<string, Platform>;
  /** Those of the shop; a platform may have its own. */
  readonly words: TradeWords;
  /** The shared procedures' files by id. */
  readonly procedures: ReadonlyMap<string, SourceFile>;
  /** A path as written in a file, from the workspace's root; `null` where it leaves the workspace. */
  readonly resolve: (from: string, written: string) => string | null;
  /** The text of a file of the workspace; `null` where there is none. */
  readonly textOf: (path: string) => string | null;
}
