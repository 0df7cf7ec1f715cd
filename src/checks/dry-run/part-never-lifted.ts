import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { spoken } from './words.ts';

const card: RuleCard = {
  code: 'part-never-lifted',
  severity: 'warning',
  title: 'All that holds a part comes out, and no one lifts it',
  why: 'A part that nothing holds hangs, or falls on whoever lies under it. Either the line that lifts it or moves it aside is missing, or its fasteners need not have come out.',
  bad: '::part[Undertray]{#tray}\n::fastener[Tray bolt]{#tray-bolt count=4 holds=tray}\n\n::step[Open]{#open}\n\n:remove[tray-bolt] with a hand under the :part[tray].\n\n::step[Close]{#close}\n\n:refit[tray-bolt].',
  good: '::part[Undertray]{#tray}\n::fastener[Tray bolt]{#tray-bolt count=4 holds=tray}\n\n::step[Open]{#open}\n\n:remove[tray-bolt] and :remove[tray].\n\n::step[Close]{#close}\n\n:refit[tray] and :refit[tray-bolt].',
};

/** A part whose fasteners are all out is lifted, or moved aside, before they go back. */
export const partNeverLifted = violationRule(card, ['never-lifted'], (violation, guide) => {
  const item = spoken(violation.item, violation.sides, guide);
  const part = spoken(violation.part, violation.sides, guide);
  const message = `nothing held ${part.the} any more, and no step lifts ${part.it} or moves ${part.it} aside before ${item.the} ${item.is === 'is' ? 'goes' : 'go'} back`;
  return { message };
});
