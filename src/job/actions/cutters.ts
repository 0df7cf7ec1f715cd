import type { Step } from '../../model/guide.ts';
import type { Action, Ref } from '../../model/inline.ts';
import { placedInStep, tells } from './walk.ts';

/** The tools that a cut names; where it names none, those that its step mentions, in the order of the text. */
export function cuttersOf(action: Action, step: Step): readonly Ref[] {
  if (action.with.length > 0) return action.with;
  return placedInStep(step).flatMap(({ node, block }) =>
    node.type === 'mention' && node.of === 'tool' && tells(block) ? [node.target] : [],
  );
}
