import type { Act, Fact, GuideRecord, RecordLine, RecordNode } from '../record.ts';
import { type Pairing, pair } from './pairs.ts';

/** An id that is another one now, of what is still the same thing to a technician. */
export interface Renaming {
  readonly name: string;
  readonly from: string;
  readonly to: string;
}

/** An older record told in the ids of a newer one, and what had another id. */
interface SameNames {
  readonly old: GuideRecord;
  readonly renamed: readonly Renaming[];
}

/**
 * Tells an older record in the ids of a newer one. A technician knows a thing by its label and a step by its title:
 * what is called the same is the same whatever its id, and only then does an id say so. What is no longer there keeps
 * its id, marked where something else has taken it.
 */
export function inNamesOf(old: GuideRecord, now: GuideRecord): SameNames {
  const renamed: Renaming[] = [];
  const places = new Map<string, string>();
  const things = new Map<string, string>();
  const note = (ids: Map<string, string>, name: string, from: string, to: string) => {
    ids.set(from, to);
    if (from !== to) renamed.push({ name, from, to });
  };
  const noteAll = <N extends RecordNode>(
    ids: Map<string, string>,
    [before, after]: readonly [readonly N[], readonly N[]],
    pairs: Pairing,
  ) => {
    for (const [one, other] of joined(before, after, pairs)) note(ids, other.name, one.id, other.id);
  };

  noteAll(places, [old.sections, now.sections], pair(old.sections, now.sections, byName));
  noteAll(places, [old.steps, now.steps], pair(old.steps, now.steps, stepPasses));
  noteAll(
    things,
    [old.items, now.items],
    pair(
      old.items,
      now.items,
      itemPasses.map((key) => (item) => `${item.kind} ${key(item)}`),
    ),
  );
  noteAll(things, [old.sequences, now.sequences], pair(old.sequences, now.sequences, byName));
  const templates = pair(old.templates, now.templates, byName);
  noteAll(things, [old.templates, now.templates], templates);
  for (const [one, other] of joined(old.templates, now.templates, templates)) {
    const features = pair(one.lines, other.lines, featurePasses);
    for (const [before, after] of joined(one.lines, other.lines, features)) {
      if (before.id !== undefined && after.id !== undefined) note(things, after.text, before.id, after.id);
    }
  }
  const newPlaces = new Set([...now.sections, ...now.steps].map(({ id }) => id));
  const newThings = new Set([
    ...[...now.items, ...now.sequences, ...now.templates].map(({ id }) => id),
    ...now.templates.flatMap(({ lines }) => lines.flatMap(({ id }) => id ?? [])),
  ]);
  const nameIn = (ids: ReadonlyMap<string, string>, taken: ReadonlySet<string>) => (id: string) =>
    ids.get(id) ?? (taken.has(id) ? `${id}~` : id);
  return {
    old: withNames(old, nameIn(things, newThings), nameIn(places, newPlaces)),
    renamed: renamed.filter(({ from, to }) => from !== to),
  };
}

function joined<T>(
  before: readonly T[],
  after: readonly T[],
  { pairs }: Pairing,
): readonly (readonly [T, T])[] {
  return pairs.flatMap(({ from, to }) => {
    const [one, other] = [before[from], after[to]];
    return one !== undefined && other !== undefined ? [[one, other] as const] : [];
  });
}

const says = (facts: readonly Fact[]) => facts.map((one) => `${one.name} ${one.says}`).join('; ');
const stated = ({ facts }: RecordNode) => says(facts.filter(({ name }) => !name.startsWith('called')));
const reads = ({ lines }: RecordNode) => lines.map(({ kind, text }) => `${kind} ${text}`).join('; ');

const byName: readonly ((node: RecordNode) => string)[] = [
  ({ id, name }) => `${id} ${name}`,
  ({ name }) => name,
  ({ id }) => id,
];

const itemPasses: readonly ((item: RecordNode) => string)[] = [
  (item) => `${item.id} ${item.name} ${stated(item)}`,
  (item) => `${item.name} ${stated(item)}`,
  ...byName,
];

const stepPasses: readonly ((step: RecordNode) => string | null)[] = [
  (step) => `${step.id} ${step.name} ${reads(step)}`,
  (step) => `${step.name} ${reads(step)}`,
  ({ id, name }) => `${id} ${name}`,
  ({ name }) => name,
  (step) => (step.lines.length > 0 ? reads(step) : null),
  ({ id }) => id,
];

const featurePasses: readonly ((line: RecordLine) => string)[] = [
  ({ kind, id, text, facts }) => `${kind} ${id ?? ''} ${text} ${says(facts)}`,
  ({ kind, text, facts }) => `${kind} ${text} ${says(facts)}`,
  ({ kind, id, text }) => `${kind} ${id ?? ''} ${text}`,
  ({ kind, text }) => `${kind} ${text}`,
  ({ kind, id, text }) => `${kind} ${id ?? text}`,
];

type Rename = (id: string) => string;

function withNames(record: GuideRecord, thing: Rename, place: Rename): GuideRecord {
  const fact = (one: Fact): Fact => {
    if (!one.ids) return one;
    const { name } = one;
    const ids = one.ids.map(ofSteps.has(name) ? place : thing);
    // Where the order says nothing it is that of the ids.
    return { ...one, ids: ordered.has(name) ? ids : ids.sort() };
  };
  const act = (one: Act): Act => ({
    ...one,
    target: one.verb === 'name step' ? place(one.target) : thing(one.target),
    facts: one.facts.map(fact),
  });
  const line = (one: RecordLine): RecordLine => ({
    ...one,
    ...(one.id === undefined ? {} : { id: thing(one.id) }),
    acts: one.acts.map(act),
    facts: one.facts.map(fact),
  });
  const within = <N extends RecordNode>(node: N): N => ({
    ...node,
    facts: node.facts.map(fact),
    lines: node.lines.map(line),
  });
  const things = <N extends RecordNode>(nodes: readonly N[]) =>
    nodes.map((node) => ({ ...within(node), id: thing(node.id) }));
  return {
    ...record,
    about: within(record.about),
    items: things(record.items),
    sequences: things(record.sequences),
    templates: things(record.templates),
    sections: record.sections.map((node) => ({ ...within(node), id: place(node.id) })),
    steps: record.steps.map((node) => ({
      ...within(node),
      id: place(node.id),
      section: place(node.section),
      undoes: node.undoes === null ? null : place(node.undoes),
    })),
  };
}

/** Facts that name steps; steps and things have name spaces of their own. */
const ofSteps: ReadonlySet<string> = new Set(['after', 'after the trial in']);

/** Facts that name things in an order of their own. */
const ordered: ReadonlySet<string> = new Set(['order', 'lies on it', 'packing list']);
