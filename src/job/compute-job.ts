import type { Guide } from '../model/guide.ts';
import type { Item } from '../model/item.ts';
import type { Job } from '../model/job.ts';
import type { Build, Option } from '../model/when.ts';
import type { Span } from '../source/span.ts';
import { anyTraitsInWords, traitsInWords, traitsOf } from './builds/build-words.ts';
import { buildKey } from './builds/builds.ts';
import { distinctOutcomes } from './builds/outcomes.ts';
import { dryRun, type Played } from './dry-run/index.ts';
import { fingerprints } from './fingerprint.ts';
import { planFor } from './plan.ts';
import { rememberingSolver } from './schedule/index.ts';

/**
 * Works out everything about a guide, once for each outcome that its builds can have.
 *
 * @param gap the line of the guide from which it is not known what is done
 */
export function computeJob(guide: Guide, crew = 2, gap: Span | null = null): Job {
  const outcomes = distinctOutcomes(guide);
  const { deciding, groups, problem } = outcomes;
  const { violations, halt, played } = dryRun(guide, outcomes, gap);
  const prints = fingerprints(guide);
  const solver = rememberingSolver();
  const isFound = ({ id }: Option) => guide.items.get(id)?.kind === 'inspection';
  const options = deciding.filter((option) => !isFound(option));
  const keyOf = (builds: readonly Build[]) =>
    builds
      .map((build) => buildKey(build, options))
      .sort()
      .join();
  return {
    fingerprint: prints.guide,
    stepFingerprints: prints.steps,
    decidingOptions: deciding.map((option) => option.id),
    buildProblem: problem,
    violations,
    halt,
    accounted: [...guide.items.values()].some(isAccounted),
    plans: groups.map((builds, index) => {
      // What is found sets no builds apart.
      const others = groups.filter((group) => keyOf(group) !== keyOf(builds)).flat();
      const sheets = playedAt(played, index);
      return {
        index,
        builds,
        statement: anyTraitsInWords(traitsOf(builds, others, options)),
        found: foundWords(deciding.filter(isFound), firstOf(builds)),
        ...planFor(guide, firstOf(builds), sheets.benches, crew, solver),
        bags: sheets.bags,
        countSheet: sheets.countSheet,
        fasteners: sheets.fasteners,
      };
    }),
  };
}

function firstOf(builds: readonly Build[]): Build {
  const [first] = builds;
  if (!first) throw new Error('a group of builds is empty');
  return first;
}

function playedAt(played: readonly Played[], index: number): Played {
  const one = played[index];
  if (!one) throw new Error('a group of builds was not played');
  return one;
}

/** Whether an item is one of those that must be in their place at the end. */
function isAccounted({ kind }: Item): boolean {
  return kind === 'part' || kind === 'fastener' || kind === 'kit' || kind === 'connector';
}

function foundWords(inspections: readonly Option[], build: Build): string {
  return traitsInWords(inspections.map((option) => ({ option, value: build[option.id] ?? false })));
}
