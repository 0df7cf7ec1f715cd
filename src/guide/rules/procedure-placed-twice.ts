import type { RuleCard } from '../../diagnostics/rule-card.ts';

const procedure =
  '---\ntitle: Look it over\n---\n\n::step[Look at the cover]{#look-cover}\n\nLook at it.\n\n::step[Look at the beam]{#look-beam}\n\nLook at it.\n';

export const procedurePlacedTwice: RuleCard = {
  code: 'procedure-placed-twice',
  severity: 'error',
  costs: 'procedure',
  title: 'The same steps are placed twice',
  why: 'What is taken off twice was there once. Two placements share the items and the names of their steps, so that nobody can tell which of them a link or a reversal means.',
  bad: {
    'procedures/look-over.md': procedure,
    'example/guide.md':
      '## Before {#before}\n\n::procedure{of=look-over}\n\n## After {#after}\n\n::procedure{of=look-over only=look-beam}\n',
  },
  good: {
    'procedures/look-over.md': procedure,
    'example/guide.md':
      '## Before {#before}\n\n::procedure{of=look-over}\n\n## After {#after}\n\n::procedure{of=look-over only=look-beam prefix=after}\n',
  },
};
