import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { barStep, clampedBar } from '../fixings/example.ts';
import { violationRule } from './violation-rule.ts';
import { spoken } from './words.ts';

const coated = clampedBar(
  'coat=thread-lock',
  '::supply[Thread-lock, medium]{#thread-lock quantity="1 ml"}\n',
);

const card: RuleCard = {
  code: 'coat-missing',
  severity: 'error',
  title: 'A fastener goes in without what belongs on its thread',
  why: 'Thread-lock keeps a bolt from working loose, grease and anti-seize let it come out again. Nobody can see afterwards whether it was put on.',
  bad:
    coated +
    barStep('fit[bar]', 'fit[spacer]', 'start[bolt]', 'tighten[bolt]', 'apply[thread-lock]{amount="1 ml"}'),
  good:
    coated +
    barStep('fit[bar]', 'fit[spacer]', 'apply[thread-lock]{amount="1 ml"}', 'start[bolt]', 'tighten[bolt]'),
};

/** What goes on a thread is applied before the fastener goes in, in the same step or since the last such one. */
export const coatMissing = violationRule(card, ['coat-missing'], (violation, guide) => {
  const item = spoken(violation.item, violation.sides, guide);
  const supply = spoken(violation.supply, [], guide);
  const it = item.it === 'it' ? 'its thread' : 'their threads';
  return {
    message: `${item.the} ${item.is === 'is' ? 'goes' : 'go'} in without ${supply.the}; put it on ${it} first, with :apply[${violation.supply}]`,
  };
});
