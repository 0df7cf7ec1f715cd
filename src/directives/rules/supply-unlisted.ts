import type { RuleCard } from '../../diagnostics/rule-card.ts';

const guide = (id: string) =>
  `::supply{#${id} quantity="2 m"}\n\n::step[Mask the edge]{#mask}\n\n:apply[${id}]{amount="1 m"} along the edge.`;
const supplies = { 'supplies.yaml': 'edge-tape: {name: Edge tape}\n' };

export const supplyUnlisted: RuleCard = {
  code: 'supply-unlisted',
  severity: 'error',
  title: 'A supply without a name that the list of supplies does not have',
  why: 'A supply that is declared without a label takes its name, and how long it dries and cures, from supplies.yaml. Where that does not know the id, the gather list would have nothing to print.',
  bad: { ...supplies, 'example/guide.md': guide('edge-tap') },
  good: { ...supplies, 'example/guide.md': guide('edge-tape') },
};
