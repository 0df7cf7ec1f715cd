import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import type { Guide } from '../../model/guide.ts';
import type { Circuit } from '../../model/item.ts';
import { formatQuantity } from '../../units/format.ts';
import type { Rule } from '../rule.ts';
import { circuitsOf } from './circuits.ts';
import { deferral } from './deferral.ts';

const words = (range: string) => `::kit[Ring lug]{#lug count=2}
::tool[Crimp tool]{#crimper crimps="${range}"}
::circuit[Winch feed]{#feed load="60 A" length="1 m" wire="16 mm²" fuse="80 A" voltage="12 V" ends="lug lug" with=crimper}

::step[Make the cable]{#make}

:fit[lug] with the :tool[crimper], one on each end of the :circuit[feed].
`;

const card: RuleCard = {
  code: 'cable-end-unfit',
  severity: 'error',
  title: 'No tool is named that can close the ends of a cable',
  why: 'A lug that is closed with the wrong jaws holds on the bench and comes off, or glows, on the road. The tool that crimps is made for some sections of wire and says which.',
  bad: words('0.5..6 mm²'),
  good: words('6..50 mm²'),
};

/** What goes on the ends of a cable is crimped by a tool made for its section, or soldered. */
export const cableEndUnfit: Rule = {
  card,
  run: ({ guide, lost }, report) => {
    for (const circuit of circuitsOf(guide)) {
      const astray = [...circuit.with, ...circuit.ends].some(
        ({ value }) => lost.ids.has(value) || !guide.items.has(value),
      );
      if (circuit.ends.length === 0 || astray || circuit.unknown.has('with')) continue;
      const message = unfitWords(circuit, guide);
      const at = circuit.with[0]?.at ?? circuit.ends[0]?.at ?? circuit.at;
      if (message !== null) report(finding(card, at, message, { notes: [deferral(guide)] }));
    }
  },
};

function unfitWords({ noun, with: named, wire }: Circuit, guide: Guide): string | null {
  const tools = named.flatMap(({ value }) => {
    const item = guide.items.get(value);
    return item?.kind === 'tool' ? [item] : [];
  });
  if (tools.some((tool) => tool.solders || tool.unknown.has('crimps'))) return null;
  const crimpers = tools.filter(({ crimps }) => crimps !== null);
  if (crimpers.length === 0)
    return `nothing says what closes the ends of the ${noun.singular}; name in with= a tool that crimps= its section of wire, or one that solders`;
  if (!wire) return null;
  const { area, size } = wire.value;
  if (
    crimpers.some(({ crimps }) => crimps && crimps.value.least.base <= area && area <= crimps.value.most.base)
  )
    return null;
  const made = crimpers.flatMap(({ noun: tool, crimps }) =>
    crimps
      ? [
          `the ${tool.singular} crimps ${formatQuantity(crimps.value.least)} to ${formatQuantity(crimps.value.most)}`,
        ]
      : [],
  );
  return `the wire of the ${noun.singular} is ${size}, and ${made.join(' and ')}`;
}
