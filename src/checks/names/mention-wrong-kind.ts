import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { findTarget, isFixing, type Target } from '../../job/index.ts';
import { articled, declaredAt, kindOf } from '../kinds.ts';
import type { Rule } from '../rule.ts';
import { type Reference, referencesOf } from './references.ts';

const card: RuleCard = {
  code: 'mention-wrong-kind',
  severity: 'error',
  title: 'Something is named as what it is not',
  why: 'A screw that is mentioned as a tool, or a part that is named to turn a screw, stands in the wrong list.',
  bad: '::fastener[Arch screw]{#arch-screw}\n\n::step[Free the arch edge]{#arch}\n\nFind the :part[arch-screw] at the lip.',
  good: '::fastener[Arch screw]{#arch-screw}\n\n::step[Free the arch edge]{#arch}\n\nFind the :fastener[arch-screw] at the lip.',
};

/** What a mention names is of the kind that the mention says. Actions have the action table for that. */
export const mentionWrongKind: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const reference of referencesOf(guide)) {
      const { ref, wanted } = reference;
      const target = findTarget(guide, ref.value);
      if (target === null || fits(reference, target)) continue;
      const kind = kindOf(target);
      const asked = wanted === 'alternative' ? 'tool' : wanted;
      report(
        finding(card, ref.at, `"${ref.value}" is ${articled(kind)}, not ${articled(asked)}`, {
          notes: [{ message: `declared here as ${articled(kind)}`, at: declaredAt(target) }],
        }),
      );
    }
  },
};

function fits({ wanted }: Reference, target: Target): boolean {
  if (wanted === 'alternative') return kindOf(target) === 'tool';
  if (wanted === 'item' || wanted === 'target' || wanted === 'need' || wanted === 'step') return true;
  // A fastener that comes in the box is both.
  if (wanted === 'fastener' && target.kind === 'item' && isFixing(target.item)) return true;
  return kindOf(target) === wanted;
}
