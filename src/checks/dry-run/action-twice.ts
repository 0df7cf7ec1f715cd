import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { actionsOf, stepsOf } from '../../job/index.ts';
import type { Action } from '../../model/inline.ts';
import type { Span } from '../../source/span.ts';
import type { Rule } from '../rule.ts';

const card: RuleCard = {
  code: 'action-twice',
  severity: 'warning',
  title: 'A step asks for the same thing twice, word for word',
  why: 'What changes nothing that is counted can stand twice unnoticed. The technician does it twice, or wonders what the second line was meant to be.',
  bad: '::part[Bumper beam]{#beam}\n\n::step[Clean up]{#clean-up}\n\n:clean[beam]. Then :clean[beam].',
  good: '::part[Bumper beam]{#beam}\n\n::step[Clean up]{#clean-up}\n\n:clean[beam]. Then :clean[beam]{as="studs of the beam"}.',
};

/** A step cleans, routes or measures a thing once; what is done otherwise, or to another place, is another thing. */
export const actionTwice: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const step of stepsOf(guide)) {
      if (step.origins.some(({ kind }) => kind === 'reverse')) continue;
      const seen = new Map<string, Span>();
      for (const { node } of actionsOf(step)) {
        if (!['clean', 'route', 'measure'].includes(node.verb)) continue;
        const first = seen.get(wording(node));
        if (!first) seen.set(wording(node), node.at);
        else {
          const message = `this step asks for it twice, word for word: :${node.verb}[${node.target.value}]`;
          report(
            finding(card, node.at, message, { notes: [{ message: 'first asked for here', at: first }] }),
          );
        }
      }
    }
  },
};

function wording({ verb, target, say, as, with: tools }: Action): string {
  return JSON.stringify([verb, target.value, say, as, tools.map(({ value }) => value)]);
}
