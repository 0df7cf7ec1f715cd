import type { Step } from '../../model/guide.ts';

/** Whether an author wrote a step: what was worked out from another repeats what that one says. */
export function isWritten(step: Step): boolean {
  return !step.origins.some(({ kind }) => kind === 'reverse');
}
