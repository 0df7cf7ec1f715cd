import type { Note } from '../../diagnostics/finding.ts';
import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { findTarget, placedIn, placedInStep, stepsOf, targetNoun, whensOfTarget } from '../../job/index.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Ref } from '../../model/inline.ts';
import type { When } from '../../model/when.ts';
import type { Span, Written } from '../../source/span.ts';
import type { Rule } from '../rule.ts';
import { areKnown, buildsOf, buildsWith, witnessNotes } from './witness.ts';

const plug = '::connector[Fog lamp plug]{#fog-plug when=fog}\n\n::step[Look behind]{#look}\n\n';

const card: RuleCard = {
  code: 'reference-dropped',
  severity: 'error',
  title: 'Something is named that the build does not have',
  why: 'A step, a picture or a message that stays while what it speaks of is gone leaves the technician looking for it.',
  bad: `${plug}Mind the :connector[fog-plug].`,
  good: `${plug}:where[Mind the :connector[fog-plug].]{when=fog}`,
};

/** What a sentence, a figure, a message, a step or an action names is there on every build that reads it. */
export const referenceDropped: Rule = {
  card,
  run: ({ guide, job }, report) => {
    const builds = buildsOf(job);
    const told = new Set<string>();
    for (const { ref, whens } of namesIn(guide)) {
      const target = conditionOf(ref.value, guide);
      const key = `${ref.at.file}\n${ref.at.start}`;
      const [condition] = target?.whens ?? [];
      const needed = (target?.whens ?? []).map(({ value }) => value);
      if (!target || !condition || told.has(key) || !areKnown([...whens, ...needed], guide)) continue;
      const read = buildsWith(whens, builds);
      const there = buildsWith(needed, read);
      // On no build at all: that is told of the condition.
      if (there.length === read.length || buildsWith(needed, builds).length === 0) continue;
      told.add(key);
      const missing = read.filter((build) => !there.includes(build));
      const notes: Note[] = [
        { message: 'it is there only under this condition', at: condition.at },
        ...witnessNotes(missing, guide, job),
      ];
      const message = `${target.name} is not there on every build that reads this`;
      report(finding(card, ref.at, message, { notes }));
    }
  },
};

interface Named {
  readonly ref: { readonly value: string; readonly at: Span };
  readonly whens: readonly When[];
}

/** Every name that is only read, or that serves an action: actions themselves have a rule of their own. */
function namesIn(guide: Guide): readonly Named[] {
  const outside = [...placedIn(guide.opening), ...guide.sections.flatMap(({ intro }) => placedIn(intro))];
  const inside = stepsOf(guide).flatMap(placedInStep);
  const texts = [...outside, ...inside].flatMap(({ node, whens }): readonly Named[] => {
    if (node.type === 'mention') return [{ ref: node.target, whens }];
    const served: readonly Ref[] = [...node.with, ...(node.trial ? [node.trial] : [])];
    return served.map((ref) => ({ ref, whens }));
  });
  const needs = stepsOf(guide).flatMap((step) =>
    step.needs.map((ref) => ({ ref, whens: step.when ? [step.when.value] : [] })),
  );
  return [...texts, ...needs];
}

function conditionOf(
  id: string,
  guide: Guide,
): { readonly whens: readonly Written<When>[]; readonly name: string } | null {
  const target = findTarget(guide, id);
  if (target) return { whens: whensOfTarget(guide, target), name: `the ${targetNoun(target).singular}` };
  const step: Step | undefined = stepsOf(guide).find((one) => one.id === id);
  return step?.when ? { whens: [step.when], name: `the step "${step.titleText}"` } : null;
}
