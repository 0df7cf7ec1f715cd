import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { spoken } from './words.ts';

const bolts = `::part[Engine mount]{#mount}
::tool[15 mm socket]{#socket-15 drive="hex 15"}
::fastener[Front mount bolt]{#front-bolt drive="hex 15" holds=mount one-by-one with=socket-15}
::fastener[Rear mount bolt]{#rear-bolt drive="hex 15" holds=mount one-by-one with=socket-15}

::step[Look at the threads]{#look}

`;

const card: RuleCard = {
  code: 'loose-together',
  severity: 'error',
  title: 'Fasteners are loose together that may only be loosened one at a time',
  why: 'Some fasteners carry what would drop, or shift, when two of them are out: an engine, an axle, a spring under load.',
  bad: `${bolts}:loosen[front-bolt] and :loosen[rear-bolt]. Then :tighten[front-bolt] and :tighten[rear-bolt].`,
  good: `${bolts}:loosen[front-bolt] and :tighten[front-bolt]. Then :loosen[rear-bolt] and :tighten[rear-bolt].`,
};

/** Of what is marked `one-by-one`, only one is loose at a time; of several in one declaration, none when its step ends. */
export const looseTogether = violationRule(card, ['loose-together'], (violation, guide) => {
  const item = spoken(violation.item, violation.sides, guide);
  const by = spoken(violation.by, violation.sides, guide);
  return {
    message:
      violation.item === violation.by
        ? `${item.the} ${item.is} done one at a time, so none may still be loose when the step ends; tighten ${item.it} in the same step`
        : `${item.the} ${item.is} loosened while ${by.the} ${by.is} loose; tighten ${by.it} first`,
  };
});
