import type { RuleCard } from '../../diagnostics/rule-card.ts';

const guide = (id: string) =>
  `::tool{#${id}}\n\n::step[Free the arch edge]{#arch}\n\nWork the :tool[${id}] behind the edge.`;
const crib = { 'tools.yaml': 'trim-lever: {name: Trim lever}\n' };

export const toolUnlisted: RuleCard = {
  code: 'tool-unlisted',
  severity: 'error',
  title: 'A tool without a name that the tool crib does not list',
  why: 'A tool or protective equipment that is declared without a label takes its name from the tool crib. Where that does not know the id, the gather list would have nothing to print.',
  bad: { ...crib, 'example/guide.md': guide('trim-lifter') },
  good: { ...crib, 'example/guide.md': guide('trim-lever') },
};
