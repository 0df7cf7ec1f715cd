import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const procedureLoop: RuleCard = {
  code: 'procedure-loop',
  severity: 'error',
  costs: 'procedure',
  title: 'A procedure places itself',
  why: 'A job that contains itself has no end, and no technician could ever finish it.',
  bad: {
    'procedures/cover.md':
      '---\ntitle: Cover off\n---\n\n::step[Look at the cover]{#look-cover}\n\nLook at it.\n\n::procedure{of=cover}\n',
    'example/guide.md': '## Strip down {#strip-down}\n\n::procedure{of=cover}\n',
  },
  good: {
    'procedures/cover.md':
      '---\ntitle: Cover off\n---\n\n::step[Look at the cover]{#look-cover}\n\nLook at it.\n',
    'example/guide.md': '## Strip down {#strip-down}\n\n::procedure{of=cover}\n',
  },
};
