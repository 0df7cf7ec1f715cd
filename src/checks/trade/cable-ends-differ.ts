import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { isIn } from '../../job/actions/uses.ts';
import { handledCount } from '../../job/index.ts';
import type { Build } from '../../model/when.ts';
import { buildsOf } from '../builds/witness.ts';
import { articled } from '../kinds.ts';
import type { Rule } from '../rule.ts';
import { circuitsOf } from './circuits.ts';

const words = (count: number) => `::kit[Ring lug]{#lug count=${count}}
::tool[Crimp tool]{#crimper crimps="0.5..6 mm²"}
::circuit[Display feed]{#feed load="0.4 A" length="4 m" wire="0.75 mm²" fuse="1 A" voltage="12 V" ends="lug lug" with=crimper}

::step[Make the cable]{#make}

:fit[lug] with the :tool[crimper], one on each end of the :circuit[feed].
`;

const card: RuleCard = {
  code: 'cable-ends-differ',
  severity: 'error',
  title: 'The ends of the cables do not come out as the box has it',
  why: 'Each end of a cable takes one of what is in the box. A lug too few shows when the cable is laid; one too many makes the technician look for an end that is not there.',
  bad: words(3),
  good: words(2),
};

/** A cable has two ends at most; what comes in the box for them is as many as the ends that take it. */
export const cableEndsDiffer: Rule = {
  card,
  run: ({ guide, job, lost }, report) => {
    const circuits = circuitsOf(guide);
    for (const { noun, ends } of circuits) {
      const [, , third] = ends;
      if (third)
        report(finding(card, third.at, `the ${noun.singular} has two ends, and this is for a third`));
      for (const { value, at } of ends) {
        const item = guide.items.get(value);
        if (!item || item.kind === 'kit' || item.kind === 'supply') continue;
        const message = `what goes on the end of the ${noun.singular} comes from the box or the supplies; "${value}" is ${articled(item.kind)}`;
        report(finding(card, at, message));
      }
    }
    const takenIn = (id: string, build: Build) =>
      circuits
        .filter((circuit) => isIn(circuit, build))
        .reduce((sum, { ends }) => sum + ends.filter(({ value }) => value === id).length, 0);
    for (const lug of guide.items.values()) {
      if (lug.kind !== 'kit' || lug.unknown.size > 0 || lost.ids.has(lug.id)) continue;
      const on = circuits.filter(({ ends }) => ends.some(({ value }) => value === lug.id));
      if (on.length === 0 || on.some(({ unknown, ends }) => unknown.has('when') || ends.length > 2)) continue;
      const there = handledCount(lug);
      const wrong = buildsOf(job).find((build) => isIn(lug, build) && takenIn(lug.id, build) !== there);
      if (!wrong) continue;
      const taken = takenIn(lug.id, wrong);
      const message = `the ends of the cables take ${taken} ${taken === 1 ? lug.noun.singular : lug.noun.plural}, and there ${there === 1 ? 'is' : 'are'} ${there}`;
      const notes = on.map((circuit) => ({ message: `on the ${circuit.noun.singular}`, at: circuit.idAt }));
      report(finding(card, lug.count.at, message, { notes }));
    }
  },
};
