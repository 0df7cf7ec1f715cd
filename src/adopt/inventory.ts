import { idLike } from '../directives/attributes/id-text.ts';
import { capitalised, nounOf, regularPlural } from '../job/words/noun.ts';
import type { FastenerType, Part, Tool, Wear } from '../model/item.ts';
import type { Platform, Shop } from '../model/shop.ts';
import { parseDrive, writtenDrive } from '../trade/drives.ts';
import { parseQuantity } from '../units/parse.ts';

/** What an item is declared as. */
type ThingKind = 'kit' | 'part' | 'fastener' | 'connector' | 'tool' | 'wear' | 'supply';

/** How an item stands at a place of the draft, as far as the old words say. */
type ThingState = 'in the box' | 'in place' | 'off' | 'started' | 'loosened' | 'tight' | 'apart' | 'gone';

/** An item of the draft. */
export interface DraftThing {
  readonly kind: ThingKind;
  readonly id: string;
  /** `null` where the crib, the types or the platform name it. */
  readonly label: string | null;
  /** For use within a sentence, in lower case. */
  readonly noun: string;
  /** `null` where the old guide does not count it. */
  readonly count: number | null;
  readonly eachSide: boolean;
  /** Attributes that are sure, as they are written. */
  readonly attributes: Map<string, string>;
  /** What its author has to decide about it. */
  readonly doubts: string[];
  state: ThingState;
}

/** What is said of a thing that is new. */
interface NewThing {
  readonly kind: ThingKind;
  readonly name: string;
  readonly count: number | null;
  readonly eachSide?: boolean;
  /** What tells it from others of its name, in the old words. */
  readonly qualifier?: string;
}

/** Words that end the name of something that holds something else. */
export const fasteners =
  'screw|bolt|nut|clip|stud|rivet|pin|fastener|fixing|retainer|washer|clamp|plug screw|grommet nut|self-tapper';
const fastenerHead = new RegExp(`(?:^|[\\s-])(?:${fasteners})s?$`, 'i');
const connectorHead = /(?:^|[\s-])(?:connector|plug|multiplug|multi-plug|harness plug)s?$/i;

/** Whether a name is that of a fastener, by its last word. */
export function namesFastener(name: string): boolean {
  return fastenerHead.test(name);
}

/** Whether a name is that of a connector, by its last word. */
export function namesConnector(name: string): boolean {
  return connectorHead.test(name);
}

/** All items of a draft, and what the shop already knows. */
export class Inventory {
  readonly things: DraftThing[] = [];
  /** Names of which the old guide leaves open what they are. */
  readonly open: string[] = [];
  readonly #shop: Shop;
  readonly #platform: Platform | undefined;
  readonly #torques: ReadonlyMap<string, string>;
  readonly #ids = new Set<string>();

  /** @param torques what is known beforehand of things by their id */
  constructor(shop: Shop, platform: string, torques: ReadonlyMap<string, string>) {
    this.#shop = shop;
    this.#platform = shop.platforms.get(platform);
    this.#torques = torques;
  }

  /** Declares a thing; a fastener type or a part of the platform with this very name fills in what it says. */
  add({ kind, name, count, eachSide = false, qualifier = '' }: NewThing): DraftThing {
    const single = singularOf(name, count);
    const base = nounOf(single).singular;
    const type = kind === 'fastener' ? this.#fastenerType(base) : undefined;
    const part = kind === 'part' ? this.#platformPart(base) : undefined;
    const label = capitalised(qualifier === '' ? single : `${single}, ${qualifier}`);
    const thing: DraftThing = {
      kind,
      id: part?.id ?? this.#freeId(label),
      label: part ? null : label,
      noun: base,
      count,
      eachSide,
      attributes: new Map(),
      doubts: [],
      state: kind === 'kit' ? 'in the box' : 'in place',
    };
    if (type) thing.attributes.set('type', type.id);
    const drive = namesFastener(base) ? driveIn(base) : null;
    if (drive !== null && (kind === 'kit' || kind === 'fastener') && !type?.drive)
      thing.attributes.set('drive', drive);
    const torque = this.#torques.get(thing.id);
    if (torque !== undefined) thing.attributes.set('torque', torque);
    this.#ids.add(thing.id);
    this.things.push(thing);
    return thing;
  }

  /** Declares a tool, or what is worn, that the crib owns; once. */
  own(found: Tool | Wear): DraftThing {
    const known = this.things.find(({ kind, id }) => kind === found.kind && id === found.id);
    if (known) return known;
    const thing: DraftThing = {
      kind: found.kind,
      id: found.id,
      label: null,
      noun: found.noun.singular,
      count: null,
      eachSide: false,
      attributes: new Map(),
      doubts: [],
      state: 'in place',
    };
    this.#ids.add(found.id);
    this.things.push(thing);
    return thing;
  }

  /** The one thing that a name means: by its whole name, or as the only one whose name ends so; `null` in doubt. */
  find(
    name: string,
    kinds: readonly ThingKind[] = ['kit', 'part', 'fastener', 'connector'],
  ): DraftThing | null {
    const wanted = new Set([name, singularOf(name, 2)].map(spoken));
    const among = this.things.filter(({ kind }) => kinds.includes(kind));
    const exact = among.filter(
      (thing) => wanted.has(spoken(thing.noun)) || wanted.has(spoken(thing.label ?? '')),
    );
    if (exact.length > 0) return exact.length === 1 ? (exact[0] ?? null) : null;
    const ending = among.filter(({ noun }) => [...wanted].some((one) => spoken(noun).endsWith(` ${one}`)));
    return ending.length === 1 ? (ending[0] ?? null) : null;
  }

  /** Whether it is left open what a name is. */
  unsettled(name: string): boolean {
    return this.open.some((one) => spoken(one) === spoken(name));
  }

  /** Whether several things share a name. */
  isAmbiguous(name: string): boolean {
    const wanted = spoken(singularOf(name, 2));
    return (
      this.things.filter(({ noun }) => spoken(noun) === wanted || spoken(noun).endsWith(` ${wanted}`))
        .length > 1
    );
  }

  /** A tool among those that the old guide names that fits a drive; `null` where there is none, or several. */
  toolFor(drive: string | undefined): DraftThing | null {
    const fitting = this.#named().filter(
      ({ drive: own }) => own && drive !== undefined && writtenDrive(own.value) === drive,
    );
    return fitting.length === 1 ? this.own(fitting[0] as Tool) : null;
  }

  /** The torque wrench among the named tools that can be set to a torque; `null` where there is none, or several. */
  wrenchFor(torque: string): DraftThing | null {
    const asked = parseQuantity(torque, 'torque');
    const fitting = this.#named().filter(
      ({ range }) =>
        range &&
        asked.ok &&
        range.value.least.base <= asked.quantity.base &&
        asked.quantity.base <= range.value.most.base,
    );
    return fitting.length === 1 ? this.own(fitting[0] as Tool) : null;
  }

  #named(): readonly Tool[] {
    return this.things.flatMap(({ kind, id }) => {
      const owned = kind === 'tool' ? this.#shop.crib.get(id) : undefined;
      return owned?.kind === 'tool' ? [owned] : [];
    });
  }

  #fastenerType(noun: string): FastenerType | undefined {
    return [...this.#shop.fastenerTypes.values()].find((type) =>
      [type.noun.singular, ...type.synonyms].some((name) => spoken(name) === spoken(noun)),
    );
  }

  #platformPart(noun: string): Part | undefined {
    const parts = [...(this.#platform?.parts.values() ?? [])];
    return parts.find((part) => spoken(part.noun.singular) === spoken(noun) && !this.#ids.has(part.id));
  }

  #freeId(label: string): string {
    const likely = idLike(label.split(/[,(]/, 1)[0] ?? '') ?? 'item';
    let id = likely;
    for (let next = 2; this.#ids.has(id); next += 1) id = `${likely}-${next}`;
    return id;
  }
}

function spoken(name: string): string {
  return name
    .toLowerCase()
    .replace(/[×]/g, 'x')
    .replace(/[^\p{L}\p{N}.]+/gu, ' ')
    .trim();
}

/** `M8 flange nuts` → `M8 flange nut`, where there are several and the regular plural leads back. */
export function singularOf(name: string, count: number | null): string {
  const plain = name.replace(/\s+/g, ' ').trim();
  if (count === 1) return plain;
  const [head = '', ...rest] = plain.split(',');
  const tried = [head.replace(/ies$/, 'y'), head.replace(/es$/, ''), head.replace(/s$/, '')];
  const single = tried.find((one) => one !== head && regularPlural(one) === head);
  return [single ?? head, ...rest].join(',');
}

/** The drive that a name states, as `T25 screw` does: never one that could as well be the size of a thread. */
function driveIn(name: string): string | null {
  const [written] = /\b(?:T|E|PH|PZ)\s?\d{1,3}\b/i.exec(name) ?? [];
  const parsed = written === undefined ? null : parseDrive(written.replace(/\s/, ''));
  return parsed?.ok ? writtenDrive(parsed.drive) : null;
}
