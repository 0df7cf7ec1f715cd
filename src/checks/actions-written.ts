import { inlinesOf, placedInStep, stepsOf } from '../job/index.ts';
import type { Block } from '../model/block.ts';
import type { Guide } from '../model/guide.ts';
import type { Action } from '../model/inline.ts';

/** An action as its author wrote it, with where in a step it stands. */
export interface WrittenAction {
  readonly action: Action;
  readonly in: Block['type'] | 'title';
}

/** Every action that stands in a step, each once: what was derived from a step repeats what its author wrote. */
export function actionsWritten(guide: Guide): readonly WrittenAction[] {
  const places = new Map<string, WrittenAction>();
  const note = (action: Action, where: WrittenAction['in']) => {
    const key = `${action.at.file}\n${action.at.start}`;
    if (!places.has(key)) places.set(key, { action, in: where });
  };
  for (const step of stepsOf(guide)) {
    for (const { node } of inlinesOf(step.title)) if (node.type === 'action') note(node, 'title');
    for (const { node, block } of placedInStep(step)) if (node.type === 'action') note(node, block.type);
  }
  return [...places.values()];
}
