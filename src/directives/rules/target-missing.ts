import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const targetMissing: RuleCard = {
  code: 'target-missing',
  severity: 'error',
  title: 'A mention or an action does not name an id',
  why: 'The brackets hold the id of something declared, so that its name, count and torque are printed from one place.',
  bad: '::tool[Trim lever]{#trim-lever}\n\n::step[Free the arch edge]{#arch}\n\nWork the :tool[Trim lever] behind the edge.',
  good: '::tool[Trim lever]{#trim-lever}\n\n::step[Free the arch edge]{#arch}\n\nWork the :tool[trim-lever] behind the edge.',
};
