import type { Report } from '../../diagnostics/report.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import { nearest } from '../../diagnostics/suggest.ts';
import type { ProcedurePlace } from '../../directives/procedure.ts';
import type { None, Step } from '../../model/guide.ts';
import type { Item } from '../../model/item.ts';
import type { Origin } from '../../model/origin.ts';
import type { Sequence } from '../../model/sequence.ts';
import type { Platform } from '../../model/shop.ts';
import type { When } from '../../model/when.ts';
import type { Written } from '../../source/span.ts';
import type { ReadingContext } from '../context.ts';
import {
  type DeclaredTemplate,
  type Draft,
  type DraftSection,
  draftSteps,
  type Entry,
  isStep,
} from '../draft.ts';
import { readProcedure } from '../read-procedure.ts';
import {
  guideTooLong,
  mostPlacedText,
  mostSteps,
  tooManySteps,
  tooMuchText,
} from '../rules/guide-too-long.ts';
import { procedureLoop } from '../rules/procedure-loop.ts';
import { procedurePlacedTwice } from '../rules/procedure-placed-twice.ts';
import { procedureStepUnknown } from '../rules/procedure-step-unknown.ts';
import { procedureUnknown } from '../rules/procedure-unknown.ts';
import { mostPlacements, proceduresTooMany } from '../rules/procedures-too-many.ts';
import { type Adaptation, adaptItem, adaptSequence, adaptStep, adaptTemplate } from './adapt.ts';
import { itemsOfSteps } from './items-of-steps.ts';
import { optionPassing } from './pass-options.ts';
import { placedReport } from './placed-report.ts';

/** What the placing of procedures may ask. */
interface Placing {
  readonly context: ReadingContext;
  readonly platform: Platform | undefined;
  /** Ids of the options that the file which holds the place can pass on. */
  readonly options: readonly string[];
  readonly origins: readonly Origin[];
  readonly report: Report;
  /** How much the guide has placed so far: procedures, and their steps (its own counted with them) and characters. */
  readonly tally: { placed: number; steps: number; characters: number };
}

/** A draft in which every procedure stands spelled out, and which steps each of them brought. */
interface Placed {
  readonly draft: Draft;
  /** Ids of the steps that a placed procedure brought, by the id of the place. */
  readonly brought: ReadonlyMap<string, readonly string[]>;
}

/** What one procedure brings to the place where it stands. */
interface Fragment {
  readonly items: readonly Item[];
  readonly left: readonly Item[];
  readonly templates: readonly DeclaredTemplate[];
  readonly sequences: readonly Sequence[];
  readonly nones: readonly None[];
  readonly entries: readonly Entry[];
}

const nothing: Fragment = { items: [], left: [], templates: [], sequences: [], nones: [], entries: [] };

/** Spells out every procedure that a draft places, and those that these place in turn. */
export function placeProcedures(draft: Draft, placing: Placing): Placed {
  const brought = new Map<string, readonly string[]>();
  const placedAt = new Map<string, ProcedurePlace>();
  const fragments: Fragment[] = [];
  const sections = draft.sections.map(
    (section): DraftSection => ({
      ...section,
      entries: section.entries.flatMap((entry) => {
        if (isStep(entry) || entry.type !== 'procedure') return [entry];
        const fragment = readFragment(entry, placing);
        fragments.push(fragment);
        const entries = newEntries(fragment.entries, entry, placedAt, placing.report);
        const place = entry.id?.value ?? entry.of.value;
        const ids = entries.flatMap((one) => (isStep(one) ? [one.id] : []));
        brought.set(place, [...(brought.get(place) ?? []), ...ids]);
        return entries;
      }),
    }),
  );
  return {
    brought,
    draft: {
      ...draft,
      sections,
      items: [...draft.items, ...fragments.flatMap(({ items }) => items)],
      left: [...draft.left, ...fragments.flatMap(({ left }) => left)],
      templates: [...draft.templates, ...fragments.flatMap(({ templates }) => templates)],
      sequences: [...draft.sequences, ...fragments.flatMap(({ sequences }) => sequences)],
      nones: [...draft.nones, ...fragments.flatMap(({ nones }) => nones)],
    },
  };
}

/** The steps that no earlier placement brought under the same name; the others are told once, at this placement. */
function newEntries(
  entries: readonly Entry[],
  place: ProcedurePlace,
  placedAt: Map<string, ProcedurePlace>,
  report: Report,
): readonly Entry[] {
  const keyOf = (step: Step) => `${step.id}\n${step.idAt.file}\n${step.idAt.start}`;
  const again = entries.filter(isStep).filter((step) => placedAt.has(keyOf(step)));
  const [first] = again;
  const earlier = first && placedAt.get(keyOf(first));
  if (first && earlier) {
    const which =
      again.length === 1
        ? `the step "${first.titleText}" is`
        : `${again.length} steps of ${place.of.value} are`;
    const message = `${which} placed a second time; give this placement a prefix= of its own, or leave out with except= what is done already`;
    report(
      finding(procedurePlacedTwice, place.at, message, {
        notes: [{ message: 'first placed here', at: earlier.at }],
      }),
    );
  }
  for (const step of entries.filter(isStep)) if (!placedAt.has(keyOf(step))) placedAt.set(keyOf(step), place);
  return entries.filter((entry) => !isStep(entry) || !again.includes(entry));
}

function readFragment(place: ProcedurePlace, placing: Placing): Fragment {
  const { context, report } = placing;
  const source = context.procedures.get(place.of.value);
  if (!source) {
    const likely = nearest(place.of.value, context.procedures.keys())[0];
    const suggestion = likely ? { at: place.of.at, text: likely } : undefined;
    const message = `there is no procedure "${place.of.value}" in the workspace`;
    report(finding(procedureUnknown, place.of.at, message, { suggestion }));
    return nothing;
  }
  const earlier = placing.origins.find(
    (origin) => origin.kind === 'procedure' && origin.procedure === place.of.value,
  );
  if (earlier) {
    const message = `the procedure "${place.of.value}" is placed within itself`;
    report(
      finding(procedureLoop, place.at, message, {
        notes: [{ message: 'first placed here', at: earlier.at }],
      }),
    );
    return nothing;
  }
  placing.tally.placed += 1;
  if (placing.tally.placed > mostPlacements) {
    const message = `this guide places more than ${mostPlacements} procedures, those within procedures counted with it`;
    if (placing.tally.placed === mostPlacements + 1) report(finding(proceduresTooMany, place.at, message));
    return nothing;
  }
  if (isTooLong(placing.tally)) return nothing;
  placing.tally.characters += source.text.length;
  if (isTooLong(placing.tally)) {
    report(finding(guideTooLong, place.at, tooMuchText));
    return nothing;
  }
  const origins: readonly Origin[] = [
    ...placing.origins,
    { kind: 'procedure', procedure: place.of.value, at: place.at },
  ];
  const inner = placedReport(new Map([[source.path, origins]]), report);
  const read = readProcedure(source, context, placing.platform, origins, inner);
  if (!read) return nothing;
  placing.tally.steps += draftSteps(read.draft).length;
  if (isTooLong(placing.tally)) {
    report(finding(guideTooLong, place.at, tooManySteps));
    return nothing;
  }
  const { draft } = placeProcedures(read.draft, {
    ...placing,
    origins,
    options: read.options.map((option) => option.id),
  });
  const names = namesFor(draft, place);
  const inspections = new Map(
    draft.items.flatMap(({ kind, id }) => (kind === 'inspection' ? [[id, names.item(id)]] : [])),
  );
  const when = optionPassing(place, read.options, placing.options, inspections, report);
  return adapted(draft, place, { ...names, when }, report);
}

function isTooLong({ steps, characters }: Placing['tally']): boolean {
  return steps > mostSteps || characters > mostPlacedText;
}

function adapted(draft: Draft, place: ProcedurePlace, by: Adaptation, report: Report): Fragment {
  const all = draft.sections.flatMap((section) => withIntro(section));
  const kept = pick(all, place, report);
  const dropped = all.filter((entry) => !kept.includes(entry));
  const spare = itemsOfSteps(dropped.filter(isStep), draft.items);
  const used = itemsOfSteps(kept.filter(isStep), draft.items);
  const isLeft = (item: Item) => spare.has(item.id) && !used.has(item.id);
  const narrowed = <T extends { readonly when: Written<When> | null }>(one: T): T => ({
    ...one,
    when: both(one.when, place.when),
  });
  return {
    items: draft.items.filter((item) => !isLeft(item)).map((item) => narrowed(adaptItem(item, by))),
    left: [...draft.items.filter(isLeft), ...draft.left].map((item) => narrowed(adaptItem(item, by))),
    templates: draft.templates.map((template) => adaptTemplate(template, by)),
    sequences: draft.sequences.map((sequence) => adaptSequence(sequence, by)),
    nones: [],
    entries: kept.map((entry) => (isStep(entry) ? narrowed(adaptStep(entry, by)) : entry)),
  };
}

/**
 * The prefix keeps two placements apart. Tools and protective equipment are the shop's, and what the platform
 * declares is one thing whatever the prefix: these stay as they are.
 */
function namesFor(draft: Draft, { prefix }: ProcedurePlace): Omit<Adaptation, 'when'> {
  if (prefix === null) return { item: (id) => id, step: (id) => id };
  const own = new Set([
    ...[...draft.items, ...draft.left].flatMap((item) => (isShared(item) ? [] : [item.id])),
    ...draft.sequences.map(({ id }) => id),
    ...draft.templates.flatMap(({ template }) => [
      template.id,
      ...[...template.holes, ...template.slots, ...template.patterns].flatMap(({ id }) => id ?? []),
    ]),
  ]);
  const steps = new Set(stepIds(draft.sections));
  const renamed = (ids: ReadonlySet<string>) => (id: string) => (ids.has(id) ? `${prefix}-${id}` : id);
  return { item: renamed(own), step: renamed(steps) };
}

function isShared(item: Item): boolean {
  return item.kind === 'tool' || item.kind === 'wear' || ('fromPlatform' in item && item.fromPlatform);
}

function stepIds(sections: readonly DraftSection[]): readonly string[] {
  return sections.flatMap(({ entries }) => entries.flatMap((entry) => (isStep(entry) ? [entry.id] : [])));
}

/** A section's entries with its intro in front of the first step: its headings open nothing in the guide. */
function withIntro({ intro, entries }: DraftSection): readonly Entry[] {
  const [first, ...rest] = entries;
  if (intro.length === 0 || !first || !isStep(first)) return entries;
  return [{ ...first, blocks: [...intro, ...first.blocks] }, ...rest];
}

function pick(entries: readonly Entry[], place: ProcedurePlace, report: Report): readonly Entry[] {
  const ids = entries.flatMap((entry) => (isStep(entry) ? [entry.id] : []));
  for (const ref of [...(place.only ?? []), ...place.except]) {
    if (ids.includes(ref.value)) continue;
    const likely = nearest(ref.value, ids)[0];
    const suggestion = likely ? { at: ref.at, text: likely } : undefined;
    const message = `"${ref.value}" is no step of ${place.of.value}`;
    report(finding(procedureStepUnknown, ref.at, message, { suggestion }));
  }
  const named = (refs: readonly { readonly value: string }[], step: Step) =>
    refs.some(({ value }) => value === step.id);
  return entries.filter(
    (entry) =>
      !isStep(entry) || ((place.only === null || named(place.only, entry)) && !named(place.except, entry)),
  );
}

function both(one: Written<When> | null, other: Written<When> | null): Written<When> | null {
  if (!one || !other) return one ?? other;
  return { value: { kind: 'and', of: [other.value, one.value], at: one.at }, at: one.at };
}
