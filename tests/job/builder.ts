import { nounOf } from '../../src/job/words/noun.ts';
import type { Block } from '../../src/model/block.ts';
import type { CutTemplate } from '../../src/model/cut-template.ts';
import type { Guide, Section, Step } from '../../src/model/guide.ts';
import type { Action, Mention, MentionKind, Verb } from '../../src/model/inline.ts';
import type {
  Condition,
  Connector,
  Fastener,
  InspectionItem,
  Item,
  KitItem,
  Measure,
  Part,
  Setting,
  Side,
  Supply,
  Tool,
  Wear,
} from '../../src/model/item.ts';
import type { Prose } from '../../src/model/prose.ts';
import type { Build, BuildSpace, Option, When } from '../../src/model/when.ts';
import type { Span, Written } from '../../src/source/span.ts';
import { usualWords } from '../../src/trade/words.ts';
import type { Estimate } from '../../src/units/estimate.ts';
import { parseQuantity } from '../../src/units/parse.ts';
import { base, type Quantity } from '../../src/units/quantity.ts';
import { parseTorque } from '../../src/units/torque.ts';

/** The place of everything that needs none of its own. */
export const nowhere: Span = { file: 'guide.md', start: 0, end: 0 };

/** A value that the author wrote nowhere in particular. */
export function written<T>(value: T, at: Span = nowhere): Written<T> {
  return { value, at };
}

/** `fog`, `not fog`, `lamps is led`, joined by one word of `and` or `or`: enough for tests of the job. */
export function when(text: string): When {
  for (const kind of ['or', 'and'] as const) {
    const parts = text.split(` ${kind} `);
    if (parts.length > 1) return { kind, of: parts.map(when), at: nowhere };
  }
  if (text.startsWith('not ')) return { kind: 'not', of: when(text.slice(4)), at: nowhere };
  const [option = '', value] = text.split(' is ');
  if (value !== undefined) return { kind: 'is', option, value, at: nowhere };
  return { kind: 'has', option, at: nowhere };
}

function maybeWhen(text: string | undefined): Written<When> | null {
  return text === undefined ? null : written(when(text));
}

function refs(text: string | undefined): Written<string>[] {
  return (text ?? '').split(' ').flatMap((id) => (id === '' ? [] : [written(id)]));
}

export function quantity(text: string): Quantity {
  const dimensions = ['length', 'volume', 'mass', 'torque', 'time'] as const;
  for (const dimension of dimensions) {
    const parsed = parseQuantity(text, dimension);
    if (parsed.ok) return parsed.quantity;
  }
  throw new Error(`${text} is no quantity`);
}

/** What a test may say of an item; the rest is as if the author had written nothing. */
export interface ItemWords {
  readonly label?: string;
  readonly plural?: string;
  readonly when?: string;
  readonly with?: string;
  readonly needs?: string;
  readonly immobile?: boolean;
  readonly count?: number;
  readonly side?: Side;
  readonly holds?: string;
  readonly covers?: string;
  readonly on?: string;
  readonly torque?: string;
  readonly drive?: string;
  readonly reuse?: boolean;
  readonly replaces?: string;
  /** Of a kit item that replaces a fastener. */
  readonly isFastener?: boolean;
  readonly free?: boolean;
  readonly stack?: string;
  readonly coat?: string;
  readonly leftHand?: boolean;
  readonly oneByOne?: boolean;
  readonly spare?: number;
  /** The measure or inspection that says how many are fitted. */
  readonly chosen?: string;
  readonly quantity?: string;
  readonly temporary?: boolean;
  readonly stays?: boolean;
  readonly unknown?: readonly string[];
  readonly or?: string;
}

type Kind = Exclude<Item['kind'], 'rating' | 'circuit'>;

/** Declares an item of a kind, with its id as its label where none is given. */
export function item(kind: Kind, id: string, words: ItemWords = {}, at: Span = nowhere): Item {
  const common = {
    id,
    noun: nounOf(words.label ?? id.replaceAll('-', ' '), words.plural ?? null),
    at,
    idAt: at,
    when: maybeWhen(words.when),
    with: refs(words.with),
    needs: [...refs(words.needs), ...refs(words.chosen)],
    work: null,
    immobile: words.immobile ?? false,
    zones: [],
    picture: null,
    origins: [],
    unknown: new Set(words.unknown ?? []),
  };
  const counted = {
    count: written(words.count ?? 1),
    countWritten: words.count !== undefined,
    side: words.side ? written(words.side) : null,
  };
  const torque = words.torque ? parseTorque(words.torque) : null;
  const fixing = {
    ...counted,
    drive: words.drive ? written({ family: words.drive } as never) : null,
    thread: null,
    standard: null,
    friction: null,
    grade: null,
    torque: torque?.ok ? written(torque.passes) : null,
    pattern: null,
    holds: refs(words.holds),
    reuse: words.reuse ?? true,
    replaces: words.replaces ? written(words.replaces) : null,
    freeWhenLoosened: words.free ?? false,
    stack: refs(words.stack),
    length: null,
    coat: words.coat ? written(words.coat) : null,
    leftHand: words.leftHand ?? false,
    oneByOne: words.oneByOne ?? false,
    recheck: null,
  };
  const spare = words.spare === undefined ? null : written(words.spare);
  const covers = refs(words.covers);
  switch (kind) {
    case 'part':
      return { ...common, ...counted, kind, covers, length: null, fromPlatform: false } as Part;
    case 'fastener':
      return { ...common, ...fixing, kind, type: null, spare } as Fastener;
    case 'kit':
      return {
        ...common,
        ...fixing,
        kind,
        spare,
        covers,
        takes: [],
        chosenBy: refs(words.chosen)[0] ?? null,
        isFastener:
          words.isFastener ?? [words.drive, words.torque, words.holds].some((value) => value !== undefined),
      } as KitItem;
    case 'connector':
      return { ...common, ...counted, kind, on: refs(words.on), takes: [] } as Connector;
    case 'condition':
      return {
        ...common,
        kind,
        stays: words.stays ?? false,
        setWords: null,
        clearWords: null,
        fromPlatform: false,
      } as Condition;
    case 'measure':
      return { ...common, kind, expect: null, words: [], recheck: null } as Measure;
    case 'inspection':
      return { ...common, kind, outcomes: refs('sound worn') } as InspectionItem;
    case 'setting':
      return { ...common, kind, from: written('off'), to: written('on') } as Setting;
    case 'supply':
      return {
        ...common,
        kind,
        quantity: words.quantity ? written(quantity(words.quantity)) : null,
        temporary: words.temporary ?? false,
        replaces: words.replaces ? written(words.replaces) : null,
        friction: null,
        dries: null,
        cures: null,
        openTime: null,
        yields: null,
        pack: null,
        synonyms: [],
      } as Supply;
    case 'tool':
      return {
        ...common,
        kind,
        inCrib: false,
        atHand: words.count ?? 1,
        synonyms: [],
        drive: null,
        range: null,
        cutterRadius: null,
        diameter: null,
        offset: null,
        length: null,
        crimps: null,
        solders: false,
        or: refs(words.or),
      } as Tool;
    case 'wear':
      return { ...common, kind, synonyms: [] } as Wear;
  }
}

export const part = (id: string, words?: ItemWords) => item('part', id, words);
export const fastener = (id: string, words?: ItemWords) => item('fastener', id, words);
export const kit = (id: string, words?: ItemWords) => item('kit', id, words);
export const connector = (id: string, words?: ItemWords) => item('connector', id, words);
export const condition = (id: string, words?: ItemWords) => item('condition', id, words);
export const measure = (id: string, words?: ItemWords) => item('measure', id, words);
export const supply = (id: string, words?: ItemWords) => item('supply', id, words);
export const tool = (id: string, words?: ItemWords) => item('tool', id, words);
export const wear = (id: string, words?: ItemWords) => item('wear', id, words);

/** What a test may say of an action besides its verb and its target. */
export interface ActionWords {
  readonly say?: string;
  readonly as?: string;
  readonly with?: string;
  readonly amount?: string;
  readonly on?: string;
  readonly trial?: string;
  readonly when?: string;
}

export function action(verb: Verb, target: string, words: ActionWords = {}, at: Span = nowhere): Action {
  return {
    type: 'action',
    verb,
    target: written(target, at),
    with: refs(words.with),
    say: words.say ?? null,
    as: words.as ?? null,
    amount: words.amount ? written(quantity(words.amount), at) : null,
    on: refs(words.on),
    over: null,
    to: null,
    trial: words.trial ? written(words.trial) : null,
    when: maybeWhen(words.when),
    inSequence: null,
    unknown: new Set(),
    at,
  };
}

export function mention(of: MentionKind, target: string, at: Span = nowhere): Mention {
  return { type: 'mention', of, target: written(target, at), as: null, when: null, at };
}

/** A line of a step: "remove screw" or "tool lever"; an object where more is to be said. */
export type Line = string | ({ readonly do: string; readonly where?: string } & ActionWords);

/** What a test may say of a step. */
export interface StepWords {
  readonly id?: string;
  readonly title?: string;
  readonly refitTitle?: string;
  readonly side?: Side;
  readonly time?: readonly [number, number, number];
  readonly wait?: number;
  readonly people?: number;
  readonly stop?: boolean;
  readonly times?: number;
  readonly needs?: string;
  readonly when?: string;
  readonly anyOrder?: boolean;
  readonly after?: string;
  readonly blocks?: readonly Block[];
  readonly do: readonly Line[];
}

export interface SectionWords {
  readonly id: string;
  readonly intro?: readonly Block[];
  readonly steps: readonly StepWords[];
}

/** What a test may say of a guide. */
export interface GuideWords {
  readonly items: readonly Item[];
  /** Steps of one section called `work`, or whole sections. */
  readonly steps?: readonly StepWords[];
  readonly sections?: readonly SectionWords[];
  readonly options?: { readonly [id: string]: string | { readonly [choice: string]: string } };
  readonly listed?: readonly Partial<Build>[];
  readonly impossible?: readonly string[];
  readonly templates?: readonly CutTemplate[];
  readonly contents?: { readonly [id: string]: number };
  readonly opening?: readonly Block[];
}

const mentionKinds: ReadonlySet<string> = new Set<MentionKind>([
  'wear',
  'tool',
  'supply',
  'kit',
  'part',
  'fastener',
  'connector',
  'condition',
  'step',
  'cut-template',
]);

/** Gives everything a place of its own, in the order of the call, so that tests can tell places apart. */
class Places {
  #next = 1;
  take(length = 8): Span {
    const start = this.#next;
    this.#next += length + 1;
    return { file: 'guide.md', start, end: start + length };
  }
}

function lineOf(line: Line, places: Places): Prose[number] {
  const words = typeof line === 'string' ? { do: line } : line;
  const [head = '', target = ''] = words.do.split(' ');
  const at = places.take(words.do.length);
  const node = mentionKinds.has(head)
    ? mention(head as MentionKind, target, at)
    : action(head as Verb, target, words, at);
  if (words.where === undefined) return node;
  return { type: 'where', when: written(when(words.where)), children: [node], at };
}

export function prose(...children: Prose): Block {
  return {
    type: 'prose',
    content: [{ type: 'element', tagName: 'p', properties: {}, children, at: nowhere }],
    at: nowhere,
  };
}

/** A proof with one line, and what it needs. */
export function prove(needs?: string): Block {
  return {
    type: 'prove',
    title: [text('Proof')],
    body: [text('It works')],
    needs: refs(needs),
    time: null,
    when: null,
    at: nowhere,
  };
}

export function text(value: string): Prose[number] {
  return { type: 'text', value, at: nowhere };
}

export function stepOf(words: StepWords, index = 0, places = new Places()): Step {
  const at = places.take();
  const id = words.id ?? `step-${index + 1}`;
  const title = words.title ?? id;
  return {
    id,
    idAt: at,
    title: [text(title)],
    titleText: title,
    refitTitle: words.refitTitle ?? null,
    side: words.side ? written(words.side, at) : null,
    time: words.time ? written(estimate(...words.time), at) : null,
    wait: words.wait === undefined ? null : written(base<'time'>(words.wait)),
    people: words.people ?? 1,
    signOff: false,
    times: words.times ? written(words.times) : null,
    until: null,
    stop: words.stop ?? false,
    anyOrder: words.anyOrder ?? false,
    after: refs(words.after),
    needs: refs(words.needs),
    zones: [],
    when: maybeWhen(words.when),
    blocks: [
      ...(words.blocks ?? []),
      prose(...words.do.flatMap((line) => [lineOf(line, places), text('. ')])),
    ],
    origins: [],
    unknown: new Set(),
    at,
  };
}

export function estimate(least: number, likely: number, most: number): Estimate {
  return { least: base<'time'>(least), likely: base<'time'>(likely), most: base<'time'>(most) };
}

export function options(words: GuideWords['options'] = {}): Option[] {
  return Object.entries(words).map(([id, value]) => ({
    id,
    name: typeof value === 'string' ? value : id,
    choices:
      typeof value === 'string'
        ? null
        : Object.entries(value).map(([choice, name]) => ({ id: choice, name, at: nowhere })),
    wish: false,
    at: nowhere,
  }));
}

export function space(words: Pick<GuideWords, 'options' | 'listed' | 'impossible'>): BuildSpace {
  return {
    options: options(words.options),
    listed: words.listed?.map((build) => written(build)) ?? null,
    impossible: (words.impossible ?? []).map((one) => written(when(one))),
  };
}

/** A guide from a few words; every declaration, step and action gets a place of its own. */
export function guide(words: GuideWords): Guide {
  const places = new Places();
  const sections: SectionWords[] = [
    ...(words.sections ?? []),
    ...(words.steps ? [{ id: 'work', steps: words.steps }] : []),
  ];
  const items = words.items.map((one) => {
    const at = places.take();
    return { ...one, at, idAt: at };
  });
  const built: Section[] = sections.map((section) => ({
    id: section.id,
    idAt: nowhere,
    title: [text(section.id)],
    titleText: section.id,
    depth: 2,
    intro: section.intro ?? [],
    steps: section.steps.map((step, index) => stepOf(step, index, places)),
    at: nowhere,
  }));
  const contents = words.contents ?? null;
  return {
    id: 'test',
    file: 'guide.md',
    title: written('Test'),
    platform: written('platform'),
    words: usualWords,
    zones: new Map(),
    partNumber: null,
    revision: null,
    updated: null,
    meantFor: null,
    notFor: null,
    doneBy: null,
    takenOff: null,
    changes: null,
    builds: space(words),
    items: new Map(items.map((one) => [one.id, one])),
    templates: new Map((words.templates ?? []).map((one) => [one.id, one])),
    sequences: new Map(),
    nones: [],
    contents:
      contents &&
      new Map(Object.entries(contents).map(([id, count]) => [id, { ...written(count), idAt: nowhere }])),
    sections: built,
    opening: words.opening ?? [],
    footnotes: [],
    links: [],
    pictures: [],
    anchors: new Set(),
    visit: null,
  };
}
