import type { RuleCard } from '../../diagnostics/rule-card.ts';

/** Placements in one guide at most, those within procedures counted with it: a bound of ours. */
export const mostPlacements = 60;

/** Six procedures, each of which places the next one twice: 2 + 4 + … + 64 placements. */
const six = Object.fromEntries(
  Array.from({ length: 6 }, (_, level) => [
    `procedures/level-${level}.md`,
    `---\ntitle: Level ${level}\n---\n\n::step[Look]{#look-${level}}\n\nLook at it.\n${
      level === 5
        ? ''
        : `\n::procedure{of=level-${level + 1} prefix=left}\n\n::procedure{of=level-${level + 1} prefix=right}\n`
    }`,
  ]),
);

export const proceduresTooMany: RuleCard = {
  code: 'procedures-too-many',
  severity: 'error',
  costs: 'procedure',
  title: 'Procedures place procedures beyond all use',
  why: 'Where each procedure places the next one twice, a dozen of them make thousands of steps. No technician works so, and no computer reads it quickly.',
  bad: {
    ...six,
    'example/guide.md':
      '## Look {#look}\n\n::procedure{of=level-0 prefix=left}\n\n::procedure{of=level-0 prefix=right}\n',
  },
  good: {
    'procedures/level-0.md':
      '---\ntitle: Level 0\n---\n\n::step[Look]{#look-0}\n\nLook at it.\n\n::procedure{of=level-1}\n',
    'procedures/level-1.md': '---\ntitle: Level 1\n---\n\n::step[Look]{#look-1}\n\nLook at it.\n',
    'example/guide.md': '## Look {#look}\n\n::procedure{of=level-0}\n',
  },
};
