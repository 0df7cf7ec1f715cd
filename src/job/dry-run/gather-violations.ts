import type { Guide, Step } from '../../model/guide.ts';
import type { Violation } from '../../model/violation.ts';
import type { Build, Option } from '../../model/when.ts';
import { stepsOf } from '../actions/walk.ts';
import { fewestTraits } from '../builds/build-words.ts';
import type { Fault, Ledger } from './ledger.ts';
import type { PlanSet } from './plan-set.ts';
import { laterRemedy } from './remedy.ts';
import type { PlayedStep } from './script.ts';

/** Every fault once: its sides together, the smallest build that shows it as the witness, and what mends it later. */
export function gatherViolations(
  { faults, script }: Ledger,
  groups: readonly (readonly Build[])[],
  options: readonly Option[],
  guide: Guide,
): readonly Violation[] {
  const steps = new Map<PlayedStep, Step>(stepsOf(guide).map((step) => [step, step]));
  const stepOf = (played: PlayedStep | null) => (played && steps.get(played)) ?? null;
  const found = new Map<string, { first: Fault; sides: Set<'left' | 'right'>; set: PlanSet }>();
  for (const { fault, set } of faults) {
    const key = faultKey(fault);
    const known = found.get(key) ?? { first: fault, sides: new Set(), set };
    if (fault.side) known.sides.add(fault.side);
    known.set |= set;
    found.set(key, known);
  }
  return [...found.values()].map(({ first, sides, set }) => {
    const { side: _, step, ...what } = first;
    const shows = script.membersOf(set);
    const inside = groups.filter((_, plan) => shows[plan]).flat();
    const outside = groups.filter((_, plan) => !shows[plan]).flat();
    const witness = witnessOf(inside, outside, options);
    return {
      ...what,
      step: stepOf(step),
      sides: [...sides].sort(),
      witness,
      later: laterRemedy(first, script, guide, stepOf),
    };
  });
}

function witnessOf(
  inside: readonly Build[],
  outside: readonly Build[],
  options: readonly Option[],
): Violation['witness'] {
  const fitted = (build: Build) => Object.values(build).filter((value) => value === true).length;
  const [smallest] = [...inside].sort((a, b) => fitted(a) - fitted(b));
  if (!smallest || outside.length === 0) return [];
  return fewestTraits(smallest, outside, options).map(({ option, value }) => ({ option: option.id, value }));
}

function faultKey(fault: Fault): string {
  const what = Object.entries(fault).flatMap(([name, value]) =>
    name !== 'side' && (typeof value === 'string' || typeof value === 'number') ? [value] : [],
  );
  return [fault.at.file, fault.at.start, fault.step?.id ?? '', ...what].join('\n');
}
