import type { Guide, Section, Step } from '../../model/guide.ts';
import type { Action, Mention, Ref } from '../../model/inline.ts';
import type { Item } from '../../model/item.ts';
import type { Build } from '../../model/when.ts';
import { allHold } from '../builds/when.ts';
import { actionRule } from './actions.ts';
import { type Placed, placedIn, placedInStep, tells } from './walk.ts';

/** An item that the text of a build uses, and the step that uses it. */
export interface Use {
  readonly item: string;
  /** `null` in a section without steps. */
  readonly step: Step | null;
  /** The action that uses it; `null` for a mention. */
  readonly action: Action | null;
}

/** The tools that an action names, or that its item names for all its actions. */
export function toolsOf(action: Action, item: Item | undefined): readonly Ref[] {
  if (action.with.length > 0) return action.with;
  return item && actionRule(action.verb).tool !== 'never' ? item.with : [];
}

/** Whether an item is there in a build. */
export function isIn(item: Item, build: Build): boolean {
  return item.when === null || allHold([item.when.value], build);
}

function isDone(step: Step, build: Build): boolean {
  return step.when === null || allHold([step.when.value], build);
}

/** The sections of a guide with the steps that a build does, up to one that ends the job. */
export function sectionsOf({ sections }: Pick<Guide, 'sections'>, build: Build): readonly Section[] {
  const done: Section[] = [];
  for (const section of sections) {
    const steps = section.steps.filter((step) => isDone(step, build));
    const stop = steps.findIndex((step) => step.stop);
    done.push({ ...section, steps: stop < 0 ? steps : steps.slice(0, stop + 1) });
    if (stop >= 0) break;
  }
  return done;
}

/**
 * Everything that a section uses in a build that does all of its steps, in the order of the text. What stands before
 * its first step belongs to that step.
 */
export function usesOf({ intro: before, steps }: Section, guide: Guide, build: Build): readonly Use[] {
  const intro = placedIn(before).flatMap((found) => useOf(found, steps[0] ?? null, guide, build));
  return [...intro, ...steps.flatMap((step) => usesOfStep(step, guide, build))];
}

/** Everything that a step uses in a build, in the order of the text. */
export function usesOfStep(step: Step, guide: Guide, build: Build): readonly Use[] {
  return placedInStep(step).flatMap((found) => useOf(found, step, guide, build));
}

function useOf(
  { node, block, whens }: Placed<Action | Mention>,
  step: Step | null,
  guide: Guide,
  build: Build,
): readonly Use[] {
  // A note for the refit speaks in the step that is derived, where it stands as ordinary text.
  if (block.type === 'refit-note' || !allHold(whens, build)) return [];
  const item = guide.items.get(node.target.value);
  const action = node.type === 'action' && tells(block) ? node : null;
  const tools = action ? toolsOf(action, item) : [];
  const here = item && isIn(item, build) ? [{ item: item.id, step, action }] : [];
  return [...here, ...tools.map((tool) => ({ item: tool.value, step, action: null }))];
}
