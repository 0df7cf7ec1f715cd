import { distinctOutcomes } from '../../job/builds/outcomes.ts';
import { precedenceOf, workOf } from '../../job/index.ts';
import { withoutDetours } from '../../job/precedence.ts';
import { networkOf } from '../../job/schedule/network.ts';
import { solve } from '../../job/schedule/solve.ts';
import type { Guide } from '../../model/guide.ts';
import type { Build } from '../../model/when.ts';
import type { VisitNodes } from './nodes.ts';
import { elapsedInOrder, switches, type Tasks, tidied } from './tidy.ts';

/**
 * The order of a visit in which one technician is done soonest, with as little going back and forth between guides
 * as that allows; worked out for the build that has most steps. Text and proofs that take no time come as soon as all
 * that their author has written before them is done; so does a step of other builds.
 */
export function quickOrder(guide: Guide, { nodes, chains }: VisitNodes): readonly string[] {
  const order = orderOf(guide, nodes);
  const build = fullestBuild(guide);
  const done = workOf(guide, build).filter(({ isProof }) => !isProof);
  const precedence = precedenceOf(guide, build, done);
  const network = networkOf(guide, build, done, precedence);
  const { starts } = solve(network, 1);
  const begins = new Map<string, number>();
  for (const [index, { step }] of network.entries()) {
    begins.set(step.id, Math.min(begins.get(step.id) ?? Number.POSITIVE_INFINITY, starts[index] ?? 0));
  }
  const written = done.map(({ step }) => step.id);
  const scheduled = [...written].sort(
    (a, b) => (begins.get(a) ?? 0) - (begins.get(b) ?? 0) || written.indexOf(a) - written.indexOf(b),
  );
  const links = withoutDetours(precedence);
  const tasks: Tasks = new Map(
    done.map(({ step }, place) => [
      step.id,
      {
        minutes: network.reduce((sum, one) => sum + (one.step === step ? one.duration / 60 : 0), 0),
        wait: step.wait?.value ?? 0,
        after: [...(links[place] ?? [])].map(([before, wait]) => ({ step: written[before] ?? '', wait })),
      },
    ]),
  );
  const ofGuides = (id: string) => [...(nodes.get(id)?.places.keys() ?? [])].join(' ');
  const candidates = [scheduled, written].map((list) => tidied(list, tasks, ofGuides));
  const best = candidates.reduce((a, b) => (isBetter(b, a, tasks, ofGuides) ? b : a));
  return withRest(best, order, chains);
}

/** Minutes within which two times are one: sums of the same numbers in another order. */
const SAME = 1e-6;

function isBetter(
  one: readonly string[],
  other: readonly string[],
  tasks: Tasks,
  ofGuides: (step: string) => string,
): boolean {
  const [time, others] = [elapsedInOrder(one, tasks), elapsedInOrder(other, tasks)];
  if (time === null || others === null) return time !== null;
  if (Math.abs(time - others) > SAME) return time < others;
  return switches(one, ofGuides) < switches(other, ofGuides);
}

/** The nodes in the order of the text. */
function orderOf({ sections }: Guide, nodes: VisitNodes['nodes']): readonly string[] {
  const written = sections.flatMap(({ id, steps }) =>
    steps.length > 0 ? steps.map((step) => step.id) : [`text ${id}`],
  );
  return written.filter((id) => nodes.has(id));
}

function fullestBuild(guide: Guide): Build {
  const builds = distinctOutcomes(guide).groups.map(([first = {}]) => first);
  const [first = {}] = builds;
  const steps = (build: Build) => workOf(guide, build).length;
  return builds.reduce((a, b) => (steps(b) > steps(a) ? b : a), first);
}

/** An order of some nodes with the rest put in, each behind the last of all that stand before it. */
function withRest(
  some: readonly string[],
  order: readonly string[],
  chains: VisitNodes['chains'],
): readonly string[] {
  const ordered = new Set(some);
  const done = new Set<string>();
  const isReady = (id: string) =>
    [...chains.values()].every((chain) =>
      chain.slice(0, Math.max(0, chain.indexOf(id))).every((one) => done.has(one)),
    );
  const takeReady = () => {
    for (const id of order) if (!ordered.has(id) && !done.has(id) && isReady(id)) done.add(id);
  };
  takeReady();
  for (const id of some) {
    done.add(id);
    takeReady();
  }
  for (const id of order) done.add(id);
  return [...done];
}
