import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { actionsOf, findTarget, stepsOf, targetNoun, whensOfTarget } from '../../job/index.ts';
import type { Rule } from '../rule.ts';
import { areKnown, buildsOf, buildsWith, witnessNotes } from './witness.ts';

const plug = '::connector[Fog lamp plug]{#fog-plug when=fog}\n\n::step[Swap the seal]{#seal}\n\n';

const card: RuleCard = {
  code: 'action-impossible',
  severity: 'error',
  title: 'Something is done to an item that the build does not have',
  why: 'A technician who is told to unplug a lamp that the vehicle does not have will look for it, behind a panel that need not have come off.',
  bad: `${plug}:disconnect[fog-plug], change its seal and :connect[fog-plug].`,
  good: `${plug}:where[:disconnect[fog-plug], change its seal and :connect[fog-plug].]{when=fog}`,
};

/** An action on an item that only some builds have stands under a condition as narrow. */
export const actionImpossible: Rule = {
  card,
  run: ({ guide, job }, report) => {
    const builds = buildsOf(job);
    const told = new Set<string>();
    for (const { node, whens } of stepsOf(guide).flatMap(actionsOf)) {
      const target = findTarget(guide, node.target.value);
      const conditions = target ? whensOfTarget(guide, target) : [];
      const [condition] = conditions;
      const needed = conditions.map(({ value }) => value);
      if (!target || !condition || node.unknown.has('when')) continue;
      if (!areKnown([...whens, ...needed], guide)) continue;
      const done = buildsWith(whens, builds);
      const there = buildsWith(needed, done);
      // On no build at all: that is told of the condition. A derived step repeats its source; one line is enough.
      if (buildsWith(needed, builds).length === 0) continue;
      const { value: id } = node.target;
      if (there.length === done.length || told.has(id)) continue;
      told.add(id);
      const missing = done.filter((build) => !there.includes(build));
      const message = `the ${targetNoun(target).singular} is not on every build for which this is done`;
      const notes = [
        { message: 'it is there only under this condition', at: condition.at },
        ...witnessNotes(missing, guide, job),
      ];
      report(finding(card, node.at, message, { notes }));
    }
  },
};
