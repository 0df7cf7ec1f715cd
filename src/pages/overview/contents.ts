import type { Guide } from '../../model/guide.ts';
import { type GuideContext, shownStep, stepRef } from '../frame/context.ts';
import type { StepRef } from '../frame/shared-views.ts';

/** A section of a print with its steps. */
export interface ContentsRow {
  readonly title: string;
  readonly steps: readonly StepRef[];
}

/**
 * No print with more steps than these is sure to have eight sheets at most: a step with its pictures may take two, and
 * the cover, the lists and what is filled in take five. Browsers do not tell a page how many sheets it will print on.
 */
const SHORT = 2;

/** What stands where in a long print, by the numbers of its steps; empty for a short one. */
export function contentsRows(guide: Guide, context: GuideContext): readonly ContentsRow[] {
  if (context.steps.size <= SHORT) return [];
  return guide.sections.flatMap(({ titleText, steps }) => {
    const own = steps.flatMap(({ id }) => {
      const [numbered, ref] = [context.steps.get(id), stepRef(context, id)];
      return numbered && ref ? [{ ...ref, ...shownStep(context, numbered) }] : [];
    });
    return own.length === 0 ? [] : [{ title: titleText, steps: own }];
  });
}
