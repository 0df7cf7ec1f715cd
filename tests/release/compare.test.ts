import { resolve } from 'node:path';
import { Ajv } from 'ajv';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { changesWork, compare, type GuideChange } from '../../src/release/compare/compare.ts';
import { comparisonJson, comparisonSchemaJson } from '../../src/release/compare/comparison-json.ts';
import { inNamesOf } from '../../src/release/compare/same-names.ts';
import { tellChanges } from '../../src/release/compare/say.ts';
import {
  type Fact,
  type GuideRecord,
  type RecordLine,
  type RecordNode,
  recordSchemaJson,
} from '../../src/release/record.ts';
import { expectText } from '../expect-text.ts';
import { runs, samples } from '../samples.ts';
import { history, states } from './edits.ts';

let records: readonly GuideRecord[] = [];
beforeAll(async () => {
  records = await states();
});

/** A change as a careful person lists it: the thing, what of it, what that bears on. */
function listedAs(change: GuideChange, names: ReadonlyMap<string, string>): string {
  const { line, fact, what } = change;
  const done = line && !line.before ? ' added' : line && !line.after ? ' taken out' : '';
  const of = line ? `${(line.after ?? line.before)?.kind}${done}` : (fact?.name ?? what);
  const lead = change.follows === null ? '' : `, with ${names.get(change.follows)}`;
  return `${change.name}: ${of} (${change.touches})${lead}`;
}

describe('a history of ten edits', () => {
  it('has ten', () => expect(history).toHaveLength(10));

  it.each(history.map((edit, index) => [edit.name, edit, index] as const))('%s', (_, edit, index) => {
    const [before, after] = [records[index], records[index + 1]];
    if (!before || !after) throw new Error('a state is missing');
    const { changes, renamed } = compare(before, after);
    const names = new Map([...before.steps, ...after.steps].map(({ id, name }) => [id, name]));
    const told = (some: readonly GuideChange[]) => some.map((change) => listedAs(change, names));
    expect(told(changes.filter(changesWork))).toEqual(edit.work);
    expect(told(changes.filter((change) => !changesWork(change)))).toEqual(edit.words);
    expect(renamed.map(({ to }) => to)).toEqual(edit.renamed ?? []);
  });

  it('is told in words', () => {
    const [first, last] = [records[0], records.at(-1)];
    if (!first || !last) throw new Error('a state is missing');
    const { work } = tellChanges(compare(first, last));
    const told = work.flatMap(({ heading, lines }) => [heading, ...lines.map(({ text }) => `  ${text}`)]);
    expectText(`${told.join('\n')}\n`, resolve(import.meta.dirname, 'expected/ten-edits.txt'));
  });
});

/** A fact as the ledger has it; what something is called is no matter of it. */
const meant = ({ name, says, means, ids }: Fact) => [name, ids ?? means ?? says, ids ? means : null];
const lineTerms = ({ kind, id, words, acts, facts }: RecordLine) => [
  kind,
  id,
  words,
  acts.map(({ verb, target, facts: own }) => [verb, target, own.map(meant)]),
  facts.map(meant),
];

interface Terms {
  readonly facts: Map<string, unknown>;
  readonly lines: unknown[];
}

function termsOf({ facts, lines }: RecordNode): Terms {
  return { facts: new Map(facts.map((fact) => [fact.name, meant(fact)])), lines: lines.map(lineTerms) };
}

/** A record in the ledger's terms: each thing with what is stated of it, and the steps in their order. */
function ledgerOf(record: GuideRecord) {
  const of = (kind: string, nodes: readonly RecordNode[]) =>
    nodes.map((node) => [`${kind} ${node.id}`, termsOf(node)] as const);
  return {
    things: new Map([
      [`guide ${record.about.id}`, termsOf(record.about)],
      ...of('item', record.items),
      ...of('sequence', record.sequences),
      ...of('section', record.sections),
      ...of('step', record.steps),
      ...of('template', record.templates),
    ]),
    order: record.steps.map(({ id }) => id),
  };
}

/** Puts a list together again: what is placed stands there, and the rest keeps its order around it. */
function rebuilt<T>(old: readonly T[], gone: ReadonlySet<number>, placed: ReadonlyMap<number, T>): T[] {
  const rest = old.filter((_, index) => !gone.has(index));
  const list: T[] = [];
  for (let place = 0; rest.length > 0 || placed.has(place); place += 1) {
    const next = placed.has(place) ? placed.get(place) : rest.shift();
    list.push(next as T);
  }
  return list;
}

/** Does to an older ledger what a comparison tells. */
function applied(old: ReturnType<typeof ledgerOf>, changes: readonly GuideChange[]) {
  const things = new Map(
    [...old.things].map(([key, { facts, lines }]) => [key, { facts: new Map(facts), lines }]),
  );
  const lines = new Map<string, GuideChange[]>();
  const gone = new Set<number>();
  const placed = new Map<number, string>();
  for (const change of changes) {
    const key = `${change.of} ${change.id}`;
    if (change.place) {
      if (change.place.from !== null) gone.add(change.place.from);
      if (change.place.to !== null) placed.set(change.place.to, change.id);
    }
    if (change.what === 'added' && change.whole) things.set(key, termsOf(change.whole) as never);
    if (change.what === 'taken out') things.delete(key);
    const thing = things.get(key);
    if (change.fact && thing) {
      const { name, after } = change.fact;
      if (after) thing.facts.set(name, meant(after));
      else thing.facts.delete(name);
    }
    if (change.line) lines.set(key, [...(lines.get(key) ?? []), change]);
  }
  for (const [key, some] of lines) {
    const thing = things.get(key);
    if (!thing) continue;
    const out = new Set(some.flatMap(({ line }) => line?.from ?? []));
    const put = new Map(
      some.flatMap(({ line }) =>
        line?.to != null && line.after ? [[line.to, lineTerms(line.after)] as const] : [],
      ),
    );
    things.set(key, { ...thing, lines: rebuilt<unknown>(thing.lines, out, put) });
  }
  return { things, order: rebuilt(old.order, gone, placed) };
}

/** The same ledger whatever the order in which things and facts were put into it. */
function plain({
  things,
  order,
}: {
  readonly things: ReadonlyMap<string, Terms>;
  readonly order: readonly string[];
}) {
  const byName = <V>(map: ReadonlyMap<string, V>) => [...map].sort(([a], [b]) => (a < b ? -1 : 1));
  return {
    order,
    things: byName(things).map(([key, { facts, lines }]) => [key, byName(facts), lines]),
  };
}

describe('a comparison', () => {
  it('of a record with itself is empty', () => {
    for (const record of records) {
      const { changes, renamed } = compare(record, record);
      expect(changes).toEqual([]);
      expect(renamed).toEqual([]);
    }
  });

  it('tells all that leads from one state to another', () => {
    const pairs = records.flatMap((from, i) => records.map((to, j) => ({ from, to, key: i * 11 + j })));
    const tried = pairs.filter(({ key }) => key % samples(7, 1) === 0);
    for (const { from, to } of tried) {
      const { changes } = compare(from, to);
      const { old } = inNamesOf(from, to);
      expect(plain(applied(ledgerOf(old), changes))).toEqual(plain(ledgerOf(to)));
    }
  });

  it('and a record follow their schemas, read by another library', () => {
    const [first, last] = [records[0], records.at(-1)];
    if (!first || !last) throw new Error('a state is missing');
    const ajv = new Ajv({ allowUnionTypes: true });
    const plainData = (value: unknown) => JSON.parse(JSON.stringify(value));
    ajv.validate(JSON.parse(recordSchemaJson()), plainData(last));
    expect(ajv.errors).toBeNull();
    ajv.validate(JSON.parse(comparisonSchemaJson()), plainData(comparisonJson(compare(first, last))));
    expect(ajv.errors).toBeNull();
  });

  it('tells nothing of other ids', () => {
    fc.assert(
      fc.property(fc.nat({ max: 10 }), fc.nat(), fc.boolean(), (which, seed, swapped) => {
        const record = records[which];
        if (!record) return;
        const { changes } = compare(record, withOtherIds(record, seed, swapped));
        expect(changes).toEqual([]);
      }),
      runs(12, 300),
    );
  });
});

/** The record with every id another one; where they are swapped, with the ids of other things of the record. */
function withOtherIds(record: GuideRecord, seed: number, swapped: boolean): GuideRecord {
  const places = [...record.sections, ...record.steps].map(({ id }) => id);
  const things = [
    ...[...record.items, ...record.sequences, ...record.templates].map(({ id }) => id),
    ...record.templates.flatMap(({ lines }) => lines.flatMap(({ id }) => id ?? [])),
  ];
  const others = (ids: readonly string[]) =>
    ids.map(
      (id, index) => [id, swapped ? (ids[(index + 1 + seed) % ids.length] ?? id) : `x${seed}-${id}`] as const,
    );
  const [place, thing] = [new Map(others(places)), new Map(others(things))];
  const inSteps = new Set(['after', 'after the trial in']);
  const fact = (one: Fact): Fact => {
    if (!one.ids) return one;
    const names = inSteps.has(one.name) ? place : thing;
    const ids = one.ids.map((id) => names.get(id) ?? id);
    return { ...one, ids: /^(?:order|lies on it|packing list)$/.test(one.name) ? ids : ids.sort() };
  };
  const node = <N extends RecordNode>(one: N, names: ReadonlyMap<string, string>): N => ({
    ...one,
    id: names.get(one.id) ?? one.id,
    facts: one.facts.map(fact),
    lines: one.lines.map((line) => ({
      ...line,
      ...(line.id === undefined ? {} : { id: thing.get(line.id) ?? line.id }),
      facts: line.facts.map(fact),
      acts: line.acts.map((act) => ({
        ...act,
        target: (act.verb === 'name step' ? place : thing).get(act.target) ?? act.target,
        facts: act.facts.map(fact),
      })),
    })),
  });
  return {
    ...record,
    about: node(record.about, new Map()),
    items: record.items.map((one) => node(one, thing)),
    sequences: record.sequences.map((one) => node(one, thing)),
    templates: record.templates.map((one) => node(one, thing)),
    sections: record.sections.map((one) => node(one, place)),
    steps: record.steps.map((one) => ({
      ...node(one, place),
      section: place.get(one.section) ?? one.section,
      undoes: one.undoes === null ? null : (place.get(one.undoes) ?? one.undoes),
    })),
  };
}
