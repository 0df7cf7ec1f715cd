import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const idDoubled: RuleCard = {
  code: 'id-doubled',
  severity: 'error',
  title: 'An id is given twice',
  why: 'A mention, a link or a count that names the id could mean either.',
  bad: `::tool[Trim lever]{#lever}
::tool[Pry bar]{#lever}

::step[Free the edge]{#edge}

Work the :tool[lever] behind it.`,
  good: `::tool[Trim lever]{#lever}
::tool[Pry bar]{#bar}

::step[Free the edge]{#edge}

Work the :tool[lever] or the :tool[bar] behind it.`,
};
