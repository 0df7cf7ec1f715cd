import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { ordersIndirectly } from './clauses.ts';
import { languageRule } from './language-rule.ts';

const card: RuleCard = {
  code: 'sentence-not-imperative',
  severity: 'warning',
  title: 'An instruction does not begin with what to do',
  why: '"The bolts are then tightened" leaves open who does it, and whether it has been done. "Tighten the bolts" does not.',
  bad: '::step[Hang the bracket]{#bracket}\n\nThe bracket should be lifted with a helper.',
  good: '::step[Hang the bracket]{#bracket}\n\nLift the bracket with a helper. Its lip lies on the beam.',
};

/** What is to be done in a step is said as a command. */
export const sentenceNotImperative = languageRule(card, 'steps', (sentence) =>
  ordersIndirectly(sentence)
    ? 'this tells what is to be done without telling anybody to do it; begin with the verb, as in "Tighten the bolts"'
    : null,
);
