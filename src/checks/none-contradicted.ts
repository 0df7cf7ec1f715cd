import { finding, type RuleCard } from '../diagnostics/rule-card.ts';
import { declaredOf } from './none-kinds.ts';
import type { Rule } from './rule.ts';

const step = '::step[Work it off]{#off}\n\nWork the :tool[trim-lever] behind the edge.';

const card: RuleCard = {
  code: 'none-contradicted',
  severity: 'error',
  title: 'None is needed, and yet some are declared',
  why: 'One of the two is left over from an earlier version of the guide.',
  bad: `::tool[Trim lever]{#trim-lever}\n::none{of=tools}\n\n${step}`,
  good: `::tool[Trim lever]{#trim-lever}\n\n${step}`,
};

/** `::none` stands only where nothing of its list is declared. */
export const noneContradicted: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const none of guide.nones) {
      const [first] = declaredOf(guide, none.of);
      if (!first) continue;
      report(
        finding(
          card,
          none.at,
          `this says that no ${none.of} are needed, and the ${first.noun.singular} is declared`,
          {
            notes: [{ message: 'declared here', at: first.idAt }],
          },
        ),
      );
    }
  },
};
