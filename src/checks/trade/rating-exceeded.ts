import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { isIn } from '../../job/actions/uses.ts';
import type { Guide } from '../../model/guide.ts';
import type { Rating } from '../../model/item.ts';
import { claimAboveWeakest, weakestLink } from '../../trade/towing.ts';
import type { Rule, Subject } from '../rule.ts';
import { deferral } from './deferral.ts';

const card: RuleCard = {
  code: 'rating-exceeded',
  severity: 'error',
  title: 'More is claimed than the weakest link may bear',
  why: 'A roof, a rail and a bracket carry no more than the least of them, and a ball, a bar and a plate tow no more than the least of them. Whatever the box promises, the weakest link governs.',
  bad: `::rating[Set of brackets]{#bracket-rating limit="75 kg"}
::rating[Roof rail]{#rail-rating limit="60 kg"}
::rating[Awning with its cloth]{#awning-load claim="68 kg"}

::step[Look at the rail]{#rail}

Look for dents along the rail.`,
  good: `::rating[Set of brackets]{#bracket-rating limit="75 kg"}
::rating[Roof rail]{#rail-rating limit="60 kg"}
::rating[Awning with its cloth]{#awning-load claim="28 kg"}

::step[Look at the rail]{#rail}

Look for dents along the rail.`,
};

/** No claim is above the least limit of its kind (a mass, a force, a current, a charge, a power) in any build. */
export const ratingExceeded: Rule = {
  card,
  run: (subject, report) => {
    const ratings = ratingsOf(subject.guide);
    for (const rating of ratings) {
      const { claim } = rating;
      if (!claim) continue;
      const links = ratings.flatMap((other) =>
        other.limit && other.limit.value.dimension === claim.value.dimension && meet(rating, other, subject)
          ? [{ name: other.noun.singular, rating: other.limit.value, at: other.limit.at }]
          : [],
      );
      const above = claimAboveWeakest(claim.value, links);
      const weakest = weakestLink(links);
      if (above === undefined || !weakest) continue;
      const notes = [
        { message: `the ${weakest.name} is rated here`, at: weakest.at },
        deferral(subject.guide),
      ];
      report(finding(card, claim.at, `for the ${rating.noun.singular}, ${above}`, { notes }));
    }
  },
};

function ratingsOf({ items }: Guide): readonly Rating[] {
  return [...items.values()].filter((item) => item.kind === 'rating');
}

/** Whether some build has both. */
function meet(one: Rating, other: Rating, { job }: Subject): boolean {
  if (one.when === null && other.when === null) return true;
  const builds = job.plans.flatMap((plan) => plan.builds);
  return builds.some((build) => isIn(one, build) && isIn(other, build));
}
