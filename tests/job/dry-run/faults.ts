import { computeJob } from '../../../src/job/index.ts';
import { type GuideWords, guide } from '../builder.ts';

/** The faults of a guide, each as its kind, the ids that it names and the step that shows it. */
export function faultsOf(words: GuideWords): readonly string[] {
  return computeJob(guide(words)).violations.map((one) => {
    const ids = ['item', 'by', 'part', 'need', 'state'].flatMap((key) => {
      const value = (one as unknown as { readonly [key: string]: unknown })[key];
      return typeof value === 'string' ? [value] : [];
    });
    const where = one.step ? [`(${one.step.id}${one.sides.length === 1 ? ` ${one.sides[0]}` : ''})`] : [];
    return [one.kind, ...ids, ...where].join(' ');
  });
}
