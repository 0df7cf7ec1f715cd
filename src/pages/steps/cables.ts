import { placedInStep } from '../../job/actions/walk.ts';
import type { Step } from '../../model/guide.ts';
import type { Circuit } from '../../model/item.ts';
import { cableWords } from '../frame/circuit-words.ts';
import type { GuideContext } from '../frame/context.ts';
import { shownWhen } from '../frame/plans.ts';
import type { CableView } from './step-views.ts';

/** The cables that a step names, or whose ends it puts on: what to cut, where it is cut. */
export function cablesOf(step: Step, context: GuideContext): readonly CableView[] {
  const { guide } = context;
  const named = new Set(placedInStep(step).map(({ node }) => node.target.value));
  const isHere = ({ id, ends }: Circuit) => named.has(id) || ends.some(({ value }) => named.has(value));
  return [...guide.items.values()].flatMap((item) => {
    if (item.kind !== 'circuit' || !isHere(item)) return [];
    const text = cableWords(item, guide);
    return text === '' ? [] : [{ ...shownWhen(context, item.when), name: item.noun.label, text }];
  });
}
