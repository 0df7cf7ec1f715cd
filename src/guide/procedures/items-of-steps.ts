import { placedInStep } from '../../job/actions/walk.ts';
import type { Step } from '../../model/guide.ts';
import type { Item } from '../../model/item.ts';

/** Ids of the items that some steps act on or mention, with the tools that those items name for themselves. */
export function itemsOfSteps(steps: readonly Step[], items: readonly Item[]): ReadonlySet<string> {
  const named = new Set<string>();
  for (const step of steps) {
    for (const { value } of step.needs) named.add(value);
    if (step.until) named.add(step.until.value);
    for (const { node } of placedInStep(step)) {
      named.add(node.target.value);
      if (node.type === 'action') for (const { value } of node.with) named.add(value);
    }
  }
  for (const item of items) if (named.has(item.id)) for (const { value } of item.with) named.add(value);
  return named;
}
