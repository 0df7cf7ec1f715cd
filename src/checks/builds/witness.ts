import type { Note } from '../../diagnostics/finding.ts';
import { allHold, fewestTraits, traitsForAuthor } from '../../job/index.ts';
import type { Guide } from '../../model/guide.ts';
import type { Job } from '../../model/job.ts';
import type { Build, When } from '../../model/when.ts';

/** Every build of a guide, reduced to the options that its conditions ask about. */
export function buildsOf(job: Job): readonly Build[] {
  return job.plans.flatMap((plan) => plan.builds);
}

/** The builds for which all of some conditions hold. */
export function buildsWith(whens: readonly When[], builds: readonly Build[]): readonly Build[] {
  return builds.filter((build) => allHold(whens, build));
}

/** Whether conditions ask only about options and choices that there are; where not, another rule has told so. */
export function areKnown(whens: readonly When[], guide: Guide): boolean {
  return whens.every((when) => isKnown(when, guide));
}

function isKnown(when: When, guide: Guide): boolean {
  switch (when.kind) {
    case 'not':
      return isKnown(when.of, guide);
    case 'and':
    case 'or':
      return areKnown(when.of, guide);
    case 'has':
    case 'is': {
      const option = guide.builds.options.find(({ id }) => id === when.option);
      if (!option || when.kind === 'has') return option?.choices === null;
      return option.choices?.some(({ id }) => id === when.value) ?? false;
    }
  }
}

/** "This happens when *fog* is fitted.": the smallest of some builds, set apart from all others. */
export function witnessNotes(inside: readonly Build[], guide: Guide, job: Job): readonly Note[] {
  const outside = buildsOf(job).filter((build) => !inside.includes(build));
  const fitted = (build: Build) => Object.values(build).filter((value) => value === true).length;
  const [smallest] = [...inside].sort((a, b) => fitted(a) - fitted(b));
  const options = guide.builds.options.filter((option) => job.decidingOptions.includes(option.id));
  if (!smallest || outside.length === 0) return [];
  return [{ message: `This happens when ${traitsForAuthor(fewestTraits(smallest, outside, options))}.` }];
}
