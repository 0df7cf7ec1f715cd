import type { Violation } from '../../model/violation.ts';
import type { Build, Option } from '../../model/when.ts';
import { fewestTraits } from '../build-words.ts';
import type { Fault } from './ledger.ts';

/** The faults of one play, and the builds that it stands for. */
export interface PlayedBuilds {
  readonly builds: readonly Build[];
  readonly faults: readonly Fault[];
}

/** Every fault once: its sides together, with the smallest build that shows it as the witness. */
export function gatherViolations(
  played: readonly PlayedBuilds[],
  options: readonly Option[],
): readonly Violation[] {
  const found = new Map<
    string,
    { readonly first: Fault; readonly sides: Set<'left' | 'right'>; readonly plays: Set<PlayedBuilds> }
  >();
  for (const one of played) {
    for (const fault of one.faults) {
      const key = faultKey(fault);
      const known = found.get(key) ?? { first: fault, sides: new Set(), plays: new Set() };
      if (fault.side) known.sides.add(fault.side);
      known.plays.add(one);
      found.set(key, known);
    }
  }
  return [...found.values()].map(({ first, sides, plays }) => {
    const { side: _, ...what } = first;
    const inside = [...plays].flatMap((one) => one.builds);
    const outside = played.filter((one) => !plays.has(one)).flatMap((one) => one.builds);
    return { ...what, sides: [...sides].sort(), witness: witnessOf(inside, outside, options) };
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
