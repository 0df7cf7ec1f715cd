import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const frontMatterMissing: RuleCard = {
  code: 'front-matter-missing',
  severity: 'error',
  title: 'A file has no front matter',
  why: 'The lines between --- at the top say what the guide is called and which platform it is for. Without them it can be found by nobody.',
  bad: { 'platforms/example-van.md': 'A van.\n' },
  good: {
    'platforms/example-van.md': '---\ntitle: Example van\noptions:\n  fog: Front fog lamps\n---\n\nA van.\n',
  },
};
