import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { conditionsOf, optionsIn } from '../../job/index.ts';
import type { Rule } from '../rule.ts';
import { areKnown, buildsOf, buildsWith, witnessNotes } from './witness.ts';

const words = (when: string) => `::part[Lamp cover]{#cover}
::inspection[Lamp bracket]{#bracket outcomes="sound cracked" when=fog}

::step[Look at the bracket]{#look}

:remove[cover]. :where[:inspect[bracket].]{when=fog} :refit[cover].

::step[Order a bracket]{#order when="${when}"}

Order a bracket.
`;

const card: RuleCard = {
  code: 'inspection-absent',
  severity: 'error',
  title: 'Something hangs on an inspection that the build does not have',
  why: 'Where nothing is looked at, nothing is found, and nobody knows whether the step is to be done.',
  bad: words('bracket is cracked'),
  good: words('fog and bracket is cracked'),
};

/** What hangs on the outcome of an inspection stands under a condition as narrow as that of the inspection. */
export const inspectionAbsent: Rule = {
  card,
  run: ({ guide, job }, report) => {
    const builds = buildsOf(job);
    for (const { when, outer } of conditionsOf(guide)) {
      const asked = optionsIn(when.value).map((id) => guide.items.get(id));
      const missing = asked.find((item) => item?.kind === 'inspection' && item.when !== null);
      if (!missing?.when || !areKnown([...outer, when.value, missing.when.value], guide)) continue;
      const read = buildsWith([...outer, when.value], builds);
      const there = buildsWith([missing.when.value], read);
      if (there.length === read.length) continue;
      const message = `the ${missing.noun.singular} is not inspected on every build for which this is read`;
      const notes = [
        { message: 'it is there only under this condition', at: missing.when.at },
        ...witnessNotes(
          read.filter((build) => !there.includes(build)),
          guide,
          job,
        ),
      ];
      report(finding(card, when.at, message, { notes }));
    }
  },
};
