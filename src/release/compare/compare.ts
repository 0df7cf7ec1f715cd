import type { Fact, GuideRecord, ItemNode, RecordNode, StepNode, TemplateNode } from '../record.ts';
import { type ChangedLine, lineChanges } from './compare-lines.ts';
import { isMessage, meaningOf, meaningOfLines, meansNothing, type Touch, touchOfFact } from './meaning.ts';
import { pair } from './pairs.ts';
import { inNamesOf, type Renaming } from './same-names.ts';

/** What a change is a change of. */
type ChangedThing = 'guide' | 'item' | 'sequence' | 'section' | 'step' | 'template';

/** What is different between two records, in the ids of the newer one. */
export interface GuideChange {
  readonly of: ChangedThing;
  readonly id: string;
  readonly name: string;
  /** Of a step, as the newer record prints it, or the older where it was taken out. */
  readonly number: number | null;
  readonly what: 'added' | 'taken out' | 'moved' | 'changed';
  readonly touches: Touch;
  /** Places in the list of steps, from 0: where it was and where it is. */
  readonly place: { readonly from: number | null; readonly to: number | null } | null;
  /** The whole of what was added or taken out. */
  readonly whole: RecordNode | null;
  readonly fact: ChangedFact | null;
  readonly line: ChangedLine | null;
  /** The title of the step that it now comes after; empty where it is the first, `null` where nothing moved. */
  readonly after: string | null;
  /** Of a refit that is worked out: the step whose change it follows. */
  readonly follows: string | null;
  /** Of an item: the ids of the steps that handle it. */
  readonly usedIn: readonly string[];
}

interface ChangedFact {
  readonly name: string;
  readonly before: Fact | null;
  readonly after: Fact | null;
}

/** What is different between two records. */
export interface Comparison {
  readonly guide: string;
  readonly from: Edition;
  readonly to: Edition;
  readonly changes: readonly GuideChange[];
  /** Ids that are others now, which changes nothing for a technician. */
  readonly renamed: readonly Renaming[];
}

/** Which state of a guide a record is of. */
interface Edition {
  readonly revision: string;
  readonly fingerprint: string;
}

/** Whether a change is one of the work, and not only of its wording. */
export function changesWork({ touches }: Pick<GuideChange, 'touches'>): boolean {
  return touches !== 'words';
}

/** What of a guide has changed from one record to another. */
export function compare(before: GuideRecord, now: GuideRecord): Comparison {
  const { old, renamed } = inNamesOf(before, now);
  const usedIn = usersOf(old, now);
  const found = [
    ...within('guide', old.about, now.about, null),
    ...listed('item', old.items, now.items).map((one) => ({ ...one, usedIn: usedIn(one.id) })),
    ...listed('sequence', old.sequences, now.sequences),
    ...listed('section', old.sections, now.sections),
    ...steps(old.steps, now.steps),
    ...templates(old.templates, now.templates),
  ];
  return {
    guide: now.guide,
    from: { revision: before.revision, fingerprint: before.fingerprint },
    to: { revision: now.revision, fingerprint: now.fingerprint },
    changes: withFollowers(found, [...old.steps, ...now.steps]),
    renamed,
  };
}

type Ordinal = { readonly number?: number | null };

function bare(
  of: ChangedThing,
  node: RecordNode & Ordinal,
  what: GuideChange['what'],
  touches: Touch,
): GuideChange {
  return {
    of,
    id: node.id,
    name: node.name,
    number: node.number ?? null,
    what,
    touches,
    place: null,
    whole: null,
    fact: null,
    line: null,
    after: null,
    follows: null,
    usedIn: [],
  };
}

/** Entries of a list whose order says nothing. */
function listed<N extends RecordNode>(
  of: ChangedThing,
  old: readonly N[],
  now: readonly N[],
): readonly GuideChange[] {
  const pairs = pair(old, now, [({ id }) => id]);
  return [
    ...each(pairs.gone, old, (node) => [wholeChange(of, node, 'taken out')]),
    ...pairs.pairs.flatMap(({ from, to }) => {
      const [before, after] = [old[from], now[to]];
      return before && after ? within(of, before, after, after) : [];
    }),
    ...each(pairs.added, now, (node) => [wholeChange(of, node, 'added')]),
  ];
}

function each<N>(
  places: readonly number[],
  list: readonly N[],
  make: (node: N, place: number) => readonly GuideChange[],
): readonly GuideChange[] {
  return places.flatMap((place) => {
    const node = list[place];
    return node === undefined ? [] : make(node, place);
  });
}

function wholeChange(of: ChangedThing, node: RecordNode & Ordinal, what: 'added' | 'taken out'): GuideChange {
  return { ...bare(of, node, what, touchOfWhole(of, node)), whole: node };
}

/** What something new, or gone, bears on: the gravest of what it says and does. */
function touchOfWhole(of: ChangedThing, node: RecordNode): Touch {
  if (of === 'template') return 'geometry';
  const kind = 'kind' in node ? (node as ItemNode).kind : null;
  if (kind === 'wear' || kind === 'rating' || kind === 'circuit' || node.lines.some(isMessage))
    return 'safety';
  const acts = node.lines.flatMap((line) => line.acts);
  if (of === 'sequence' || node.facts.some(({ name }) => name === 'torque')) return 'torque';
  if (acts.some(({ verb }) => verb === 'tighten')) return 'torque';
  if (acts.some(({ verb }) => verb === 'cut' || verb === 'drill')) return 'geometry';
  return of === 'section' && meansNothing(meaningOfLines(node.lines)) ? 'words' : 'work';
}

function steps(old: readonly StepNode[], now: readonly StepNode[]): readonly GuideChange[] {
  const { pairs, gone, added } = pair(old, now, [({ id }) => id]);
  const after = (place: number) => now[place - 1]?.name ?? '';
  const placeOf = new Map<string, number>();
  for (const list of [old, now]) {
    for (const [place, { id }] of list.entries()) placeOf.set(id, place);
  }
  const found = [
    ...each(gone, old, (node, from) => [
      { ...wholeChange('step', node, 'taken out'), place: { from, to: null } },
    ]),
    ...pairs.flatMap(({ from, to, moved }) => {
      const [one, other] = [old[from], now[to]];
      if (!one || !other) return [];
      const elsewhere = moved || one.section !== other.section;
      const move = { ...bare('step', other, 'moved', 'work'), place: { from, to }, after: after(to) };
      return [...(elsewhere ? [move] : []), ...within('step', one, other, other)];
    }),
    ...each(added, now, (node, to) => [
      { ...wholeChange('step', node, 'added'), place: { from: null, to }, after: after(to) },
    ]),
  ];
  // In the order in which they are done; what is gone stands where it stood.
  return found.sort((a, b) => (placeOf.get(a.id) ?? 0) - (placeOf.get(b.id) ?? 0));
}

function templates(old: readonly TemplateNode[], now: readonly TemplateNode[]): readonly GuideChange[] {
  const found = listed('template', old, now).map((one) =>
    one.touches === 'words' ? one : { ...one, touches: 'geometry' as const },
  );
  // What comes of the drawing of an accessory's maker stands in no feature.
  const redrawn = now.filter(({ id, fingerprint }) => {
    const before = old.find((one) => one.id === id);
    return (
      before && before.fingerprint !== fingerprint && !found.some((one) => one.id === id && changesWork(one))
    );
  });
  return [...found, ...redrawn.map((node) => bare('template', node, 'changed', 'geometry'))];
}

/** What has changed within one thing. */
function within(
  of: ChangedThing,
  old: RecordNode,
  now: RecordNode,
  printed: (RecordNode & Ordinal) | null,
): readonly GuideChange[] {
  const node = printed ?? now;
  return [
    ...changedFacts(old.facts, now.facts).map(({ touches, ...fact }) => ({
      ...bare(of, node, 'changed', touches),
      fact,
    })),
    ...lineChanges(old.lines, now.lines).map(({ touches, ...line }) => ({
      ...bare(of, node, 'changed', touches),
      line,
    })),
  ];
}

function changedFacts(
  old: readonly Fact[],
  now: readonly Fact[],
): readonly (ChangedFact & { readonly touches: Touch })[] {
  const found = [...new Set([...old, ...now].map(({ name }) => name))];
  return found.flatMap((name) => {
    const before = old.find((one) => one.name === name) ?? null;
    const after = now.find((one) => one.name === name) ?? null;
    if (before && after && meaningOf(before) === meaningOf(after)) {
      // What is named has a name of its own, whose change is told there.
      const same = before.says === after.says || after.ids !== undefined;
      return same ? [] : [{ name, before, after, touches: 'words' }];
    }
    return [{ name, before, after, touches: touchOfFact(name) }];
  });
}

/** The steps that do something to a thing or name it: as it is now, or else as it was. */
function usersOf(old: GuideRecord, now: GuideRecord): (id: string) => readonly string[] {
  const users = (record: GuideRecord) => {
    const found = new Map<string, string[]>();
    for (const step of record.steps) {
      const named = step.lines.flatMap(({ acts }) =>
        acts.flatMap(({ target, facts }) => [target, ...facts.flatMap(({ ids }) => ids ?? [])]),
      );
      for (const id of new Set(named)) found.set(id, [...(found.get(id) ?? []), step.id]);
    }
    return found;
  };
  const [before, after] = [users(old), users(now)];
  return (id) => after.get(id) ?? before.get(id) ?? [];
}

/** A refit that is worked out changes with what it undoes: that is said once, at the step that an author wrote. */
function withFollowers(changes: readonly GuideChange[], known: readonly StepNode[]): readonly GuideChange[] {
  const undoes = new Map(known.flatMap(({ id, undoes: source }) => (source === null ? [] : [[id, source]])));
  return changes.map((change) => {
    const source = change.of === 'step' ? undoes.get(change.id) : undefined;
    const lead = changes.find(
      (one) =>
        one.of === 'step' &&
        one.id === source &&
        one.what === change.what &&
        (change.fact ? one.fact?.name === change.fact.name : (one.line !== null) === (change.line !== null)),
    );
    return lead && source !== undefined ? { ...change, follows: source } : change;
  });
}
