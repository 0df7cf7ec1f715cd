import type { Guide } from '../model/guide.ts';
import type { Job } from '../model/job.ts';
import type { Build } from '../model/when.ts';
import { anyTraitsInWords, traitsOf } from './build-words.ts';
import { fingerprints } from './fingerprint.ts';
import { distinctOutcomes } from './outcomes.ts';
import { planFor } from './plan.ts';

/** Works out everything about a guide, once for each outcome that its builds can have. */
export function computeJob(guide: Guide): Job {
  const { deciding, groups, problem } = distinctOutcomes(guide);
  const prints = fingerprints(guide);
  return {
    fingerprint: prints.guide,
    stepFingerprints: prints.steps,
    decidingOptions: deciding.map((option) => option.id),
    buildProblem: problem,
    plans: groups.map((builds, index) => {
      const others = groups.filter((group) => group !== builds).flat();
      return {
        index,
        builds,
        statement: anyTraitsInWords(traitsOf(builds, others, deciding)),
        ...planFor(guide, firstOf(builds)),
      };
    }),
  };
}

function firstOf(builds: readonly Build[]): Build {
  const [first] = builds;
  if (!first) throw new Error('a group of builds is empty');
  return first;
}
