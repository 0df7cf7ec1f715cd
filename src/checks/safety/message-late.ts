import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { placedIn, stepsOf } from '../../job/index.ts';
import type { Block } from '../../model/block.ts';
import { isWritten } from '../language/written.ts';
import type { Rule } from '../rule.ts';

const card: RuleCard = {
  code: 'message-late',
  severity: 'error',
  title: 'A safety message stands after the work that it guards',
  why: 'The order of the text is the order of doing. A warning that follows the action is read by someone who is already hurt.',
  bad: '::part[Undertray]{#undertray}\n\n::step[Take down the undertray]{#tray}\n\n:remove[undertray]{say=lower}, then :refit[undertray].\n\n:::caution[Grit]\nDirt falls out of the tray and can hurt an eye. Look away.\n:::',
  good: '::part[Undertray]{#undertray}\n\n::step[Take down the undertray]{#tray}\n\n:::caution[Grit]\nDirt falls out of the tray and can hurt an eye. Look away.\n:::\n\n:remove[undertray]{say=lower}, then :refit[undertray].',
};

/** No safety message stands after all that is done in its step. */
export const messageLate: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const step of stepsOf(guide).filter(isWritten)) {
      for (const [index, block] of step.blocks.entries()) {
        if (block.type !== 'message') continue;
        const last = lastAction(step.blocks.slice(0, index));
        if (!last || step.blocks.slice(index + 1).some(({ type }) => type === 'prose')) continue;
        const message = `this ${block.word} stands after what it guards; put it before the first action of the step`;
        report(
          finding(card, block.at, message, { notes: [{ message: 'done before it is read', at: last }] }),
        );
      }
    }
  },
};

function lastAction(blocks: readonly Block[]) {
  const told = blocks.filter(({ type }) => type === 'prose');
  return placedIn(told).findLast(({ node }) => node.type === 'action')?.node.at;
}
