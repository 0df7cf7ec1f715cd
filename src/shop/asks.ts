import type { Shop } from '../model/shop.ts';
import type { SourceFile } from '../source/source-file.ts';
import { sha256 } from '../store/content-hash.ts';
import { noFile, steadyFiles } from './files/steady-files.ts';
import type { WorkspaceFiles } from './files/workspace-files.ts';
import type { Workspace } from './open-workspace.ts';

/** The lists of a workspace in which a guide looks things up. */
const lists = [
  'crib',
  'fastenerTypes',
  'supplies',
  'platforms',
  'procedures',
  'ownPictures',
  'files',
] as const;
type List = (typeof lists)[number];

/**
 * What a guide has asked its workspace while it was worked on: an entry of a list (whether or not it is there), a
 * whole list, the bytes of a file, or which page another file has become.
 */
export type Ask =
  | { readonly of: List; readonly name: string }
  | { readonly of: 'whole'; readonly name: List }
  | { readonly of: 'bytes' | 'page'; readonly name: string };

/** Notes each ask, as often as it is made; of bytes, with the answer that was given. */
export type NoteAsk = (ask: Ask, answer?: string) => void;

/** What a guide may ask of its workspace, each ask noted. */
export interface WatchedWorkspace {
  readonly shop: Shop;
  readonly procedures: ReadonlyMap<string, SourceFile>;
  readonly files: Pick<WorkspaceFiles, 'read'>;
}

/** The workspace as one guide sees it: every look at something outside the guide is noted. */
export function watched(
  { shop, procedures, files }: Pick<Workspace, 'shop' | 'procedures' | 'files'>,
  note: NoteAsk,
): WatchedWorkspace {
  return {
    shop: {
      settings: shop.settings,
      crib: new WatchedMap(shop.crib, 'crib', note),
      fastenerTypes: new WatchedMap(shop.fastenerTypes, 'fastenerTypes', note),
      supplies: new WatchedMap(shop.supplies, 'supplies', note),
      platforms: new WatchedMap(shop.platforms, 'platforms', note),
      ownPictures: new WatchedMap(shop.ownPictures, 'ownPictures', note),
      files: new WatchedMap(shop.files, 'files', note),
    },
    procedures: new WatchedMap(procedures, 'procedures', note),
    files: steadyFiles(files, (path, hash) => note({ of: 'bytes', name: path }, hash)),
  };
}

/** A map that notes what is looked up in it; whoever walks through it has asked for the whole. */
class WatchedMap<V> implements ReadonlyMap<string, V> {
  readonly #map: ReadonlyMap<string, V>;
  readonly #list: List;
  readonly #note: NoteAsk;

  constructor(map: ReadonlyMap<string, V>, list: List, note: NoteAsk) {
    this.#map = map;
    this.#list = list;
    this.#note = note;
  }

  get(name: string): V | undefined {
    this.#note({ of: this.#list, name });
    return this.#map.get(name);
  }

  has(name: string): boolean {
    this.#note({ of: this.#list, name });
    return this.#map.has(name);
  }

  get size(): number {
    return this.#all().size;
  }

  forEach(call: (value: V, key: string, map: ReadonlyMap<string, V>) => void): void {
    this.#all().forEach(call);
  }

  keys() {
    return this.#all().keys();
  }

  values() {
    return this.#all().values();
  }

  entries() {
    return this.#all().entries();
  }

  [Symbol.iterator]() {
    return this.#all()[Symbol.iterator]();
  }

  #all(): ReadonlyMap<string, V> {
    this.#note({ of: 'whole', name: this.#list });
    return this.#map;
  }
}

/** What a workspace answers to an ask, as a short text that differs where the answer does. */
export type AnswerTo = (ask: Ask) => string;

/**
 * Answers asks, each worked out once.
 *
 * @param pageOf the page that a file of the workspace becomes, `null` for none
 */
export function answers(
  { shop, procedures, files }: Workspace,
  pageOf: (path: string) => string | null,
): AnswerTo {
  const maps: { readonly [name in List]: ReadonlyMap<string, unknown> } = {
    crib: shop.crib,
    fastenerTypes: shop.fastenerTypes,
    supplies: shop.supplies,
    platforms: shop.platforms,
    procedures,
    ownPictures: shop.ownPictures,
    files: shop.files,
  };
  const known = new Map<string, string>();
  const answer = ({ of, name }: Ask): string => {
    switch (of) {
      case 'whole':
        return valueHash(maps[name]);
      case 'bytes':
        return files.hash(name) ?? noFile;
      case 'page':
        return pageOf(name) ?? noFile;
      default: {
        const value = maps[of].get(name);
        return value === undefined ? noFile : valueHash(value);
      }
    }
  };
  return (ask) => {
    const key = `${ask.of} ${ask.name}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const now = answer(ask);
    known.set(key, now);
    return now;
  };
}

/** SHA-256 of plain data with maps and sets in it. */
function valueHash(value: unknown): string {
  const plain = (_: string, part: unknown) => {
    if (part instanceof Map) return { map: [...part] };
    return part instanceof Set ? { set: [...part] } : part;
  };
  return sha256(JSON.stringify(value, plain) ?? 'undefined');
}
