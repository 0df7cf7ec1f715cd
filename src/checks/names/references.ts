import { nearest } from '../../diagnostics/suggest.ts';
import {
  findTarget,
  inlinesOf,
  oncePer,
  placedIn,
  placedInStep,
  provesOf,
  stepsOf,
} from '../../job/index.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { MentionKind, Ref } from '../../model/inline.ts';
import type { Item } from '../../model/item.ts';
import type { Sequence } from '../../model/sequence.ts';

/** What the place of a reference asks of the thing that it names. */
export type Wanted = MentionKind | 'item' | 'target' | 'need' | 'alternative';

/** An id that a guide names, as its author wrote it. */
export interface Reference {
  readonly ref: Ref;
  readonly wanted: Wanted;
  /** The step in which it stands; `null` outside steps. */
  readonly step: Step | null;
  /** What the item or template is called whose declaration names it; `null` in the text. */
  readonly from: string | null;
}

/** Every id that a guide names, each place once, in the order of the files. */
export const referencesOf: (guide: Guide) => readonly Reference[] = oncePer((guide) => {
  const all = [
    ...inText(guide),
    ...inSteps(guide),
    ...inProofs(guide),
    ...[...guide.items.values()].flatMap(inItem),
    ...inTemplates(guide),
    ...[...guide.sequences.values()].flatMap(inSequence),
  ];
  const places = new Map<string, Reference>();
  // A step that was derived by reversal repeats what its source says; the author wrote it once.
  for (const one of all) {
    const { value, at } = one.ref;
    const key = `${at.file}\n${at.start}\n${value}`;
    if (!places.has(key)) places.set(key, one);
  }
  return [...places.values()];
});

/** What the ids that nobody declares were likely meant to be, since each such slip is told once already. */
export function idsMeant(guide: Guide): readonly string[] {
  const slips = referencesOf(guide).filter(({ ref }) => findTarget(guide, ref.value) === null);
  return slips.flatMap(({ ref }) => nearest(ref.value, guide.items.keys()));
}

/** Every id that a guide names or links to on its own page, declared or not. */
export function idsNamed(guide: Guide): ReadonlySet<string> {
  const anchors = guide.links.flatMap(({ href }) => /^#(.+)$/.exec(href)?.[1] ?? []);
  return new Set([...referencesOf(guide).map(({ ref }) => ref.value), ...anchors]);
}

function inText(guide: Guide): Reference[] {
  const intros = guide.sections.flatMap((section) => [
    ...placedIn(section.intro),
    ...inlinesOf(section.title),
  ]);
  const outside = [...placedIn(guide.opening), ...intros, ...inlinesOf(guide.footnotes)];
  return outside.flatMap(({ node }) => inNode(node, null));
}

function inSteps(guide: Guide): Reference[] {
  return stepsOf(guide).flatMap((step) => [
    ...step.needs.map((ref): Reference => ({ ref, wanted: 'need', step, from: null })),
    ...(step.until ? [{ ref: step.until, wanted: 'need' as const, step, from: null }] : []),
    ...step.after.map((ref): Reference => ({ ref, wanted: 'step', step, from: null })),
    ...inlinesOf(step.title).flatMap(({ node }) => inNode(node, step)),
    ...placedInStep(step).flatMap(({ node }) => inNode(node, step)),
  ]);
}

function inProofs(guide: Guide): Reference[] {
  return provesOf(guide).flatMap((block) =>
    block.type === 'prove'
      ? block.needs.map((ref): Reference => ({ ref, wanted: 'need', step: null, from: null }))
      : [],
  );
}

type Node = ReturnType<typeof inlinesOf>[number]['node'];

function inNode(node: Node, step: Step | null): Reference[] {
  if (node.type === 'mention') return [{ ref: node.target, wanted: node.of, step, from: null }];
  return [
    { ref: node.target, wanted: 'target', step, from: null },
    ...node.with.map((ref): Reference => ({ ref, wanted: 'tool', step, from: null })),
    ...node.on.map((ref): Reference => ({ ref, wanted: 'item', step, from: null })),
    ...(node.trial ? [{ ref: node.trial, wanted: 'step' as const, step, from: null }] : []),
  ];
}

function inItem(item: Item): Reference[] {
  const named = (refs: readonly Ref[], wanted: Wanted) =>
    refs.map((ref): Reference => ({ ref, wanted, step: null, from: item.noun.singular }));
  return [
    ...named(item.with, 'tool'),
    ...named(item.needs, 'need'),
    ...('ends' in item ? named(item.ends, 'item') : []),
    ...('or' in item ? named(item.or, 'alternative') : []),
    ...('holds' in item ? named(item.holds, 'item') : []),
    ...('covers' in item ? named(item.covers, 'item') : []),
    ...('takes' in item ? named(item.takes, 'item') : []),
    ...('on' in item ? named(item.on, 'item') : []),
    ...('stack' in item ? named(item.stack, 'item') : []),
    ...('coat' in item && item.coat ? named([item.coat], 'supply') : []),
    ...('replaces' in item && item.replaces ? named([item.replaces], 'item') : []),
  ];
}

function inSequence({ order, label }: Sequence): Reference[] {
  return order.map((ref) => ({ ref, wanted: 'fastener', step: null, from: label }));
}

function inTemplates(guide: Guide): Reference[] {
  return [...guide.templates.values()].flatMap((template) => {
    const named = (ref: Ref | null, from: string): Reference[] =>
      ref === null ? [] : [{ ref, wanted: 'item', step: null, from }];
    const holes = [...template.holes, ...template.slots, ...template.patterns];
    return [
      ...named(template.panel, template.title),
      ...holes.flatMap((hole) => named(hole.for, hole.label)),
    ];
  });
}
