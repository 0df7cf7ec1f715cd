import { placedIn, placedInStep } from '../job/actions/walk.ts';
import type { Step } from '../model/guide.ts';
import type { Item } from '../model/item.ts';
import { type Draft, draftSteps } from './draft.ts';

/**
 * A draft with what its placements left out and its steps still need: whatever the text names, since the host may
 * do the work of a step that was left out itself; whatever holds, covers, plugs or replaces something that a step
 * handles, so that half a procedure lifts nothing with its screws in; and whatever these name in turn.
 */
export function withLeftOut(draft: Draft): Draft {
  const steps = draftSteps(draft);
  const named = new Set([
    ...namedIn(steps),
    ...draft.sections.flatMap(({ intro }) => placedIn(intro).map(idOf)),
  ]);
  const handled = new Set(
    steps.flatMap(placedInStep).flatMap(({ node }) => (node.type === 'action' ? [node.target.value] : [])),
  );
  // What the host declares itself is its own.
  const declared = new Set(draft.items.map(({ id }) => id));
  const left = draft.left.filter(({ id }) => !declared.has(id));
  const kept = new Set<Item>(left.filter((item) => named.has(item.id) || bearsOn(item, handled)));
  // What is kept names further things; each pass keeps some of what is left, so that this ends.
  for (let before = -1; before < kept.size; ) {
    before = kept.size;
    const wanted = new Set([...draft.items, ...kept].flatMap(namesOf));
    for (const item of left) if (wanted.has(item.id)) kept.add(item);
  }
  return { ...draft, items: [...draft.items, ...left.filter((item) => kept.has(item))], left: [] };
}

function namedIn(steps: readonly Step[]): readonly string[] {
  return steps.flatMap((step) => [
    ...step.needs.map(({ value }) => value),
    ...placedInStep(step).flatMap((found) => [
      idOf(found),
      ...(found.node.type === 'action' ? found.node.with.map(({ value }) => value) : []),
    ]),
  ]);
}

function idOf({ node }: ReturnType<typeof placedIn>[number]): string {
  return node.target.value;
}

/** Whether an item keeps a thing that is handled from coming off or going in, or takes its place. */
function bearsOn(item: Item, handled: ReadonlySet<string>): boolean {
  return [
    ...('holds' in item ? item.holds : []),
    ...('on' in item ? item.on : []),
    ...('covers' in item ? item.covers : []),
    ...('replaces' in item && item.replaces ? [item.replaces] : []),
  ].some(({ value }) => handled.has(value));
}

function namesOf(item: Item): readonly string[] {
  return [
    ...item.with,
    ...item.needs,
    ...('or' in item ? item.or : []),
    ...('ends' in item ? item.ends : []),
    ...('holds' in item ? item.holds : []),
    ...('on' in item ? item.on : []),
    ...('covers' in item ? item.covers : []),
    ...('replaces' in item && item.replaces ? [item.replaces] : []),
  ].map(({ value }) => value);
}
