import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import type { Rule } from '../rule.ts';
import { comparableWords, messagesWritten, type WrittenMessage } from './messages-written.ts';

/** In how many steps of a section the same message is one too many. */
const TOO_MANY = 3;

const caution = ':::caution[Sharp edge]\nThe lip can cut a finger. Wear gloves.\n:::\n\n';
const steps = ['upper', 'middle', 'lower'];
const heading = '## Strip down {#strip-down}\n\n';

const card: RuleCard = {
  code: 'message-repeated',
  severity: 'warning',
  title: 'The same safety message stands in three steps of a section',
  why: 'Who reads the same warning for the third time has stopped reading warnings. What holds for the whole section is said once, before its first step.',
  bad: `${heading}${steps.map((step) => `::step[Look at the ${step} panel]{#${step}}\n\n${caution}Feel along the ${step} lip.\n`).join('\n')}`,
  good: `${heading}${caution}${steps.map((step) => `::step[Look at the ${step} panel]{#${step}}\n\nFeel along the ${step} lip.\n`).join('\n')}`,
};

/** A message that three written steps of a section share stands at the head of the section instead. */
export const messageRepeated: Rule = {
  card,
  run: ({ guide }, report) => {
    const inSteps = messagesWritten(guide).filter(({ step }) => step !== null);
    const alike = new Map<string, WrittenMessage[]>();
    for (const written of inSteps) {
      const key = `${written.section.id}\n${written.message.word}\n${comparableWords(written, guide)}`;
      const others = alike.get(key) ?? [];
      if (!others.some(({ step }) => step === written.step)) alike.set(key, [...others, written]);
    }
    for (const [first, ...others] of alike.values()) {
      const last = others.at(-1);
      if (!first || !last || others.length + 1 < TOO_MANY) continue;
      const message = `the same ${first.message.word} stands in ${others.length + 1} steps of this section; say it once, before the first step`;
      const notes = [first, ...others.slice(0, -1)].map(({ message: { at } }) => ({
        message: 'also here',
        at,
      }));
      report(finding(card, last.message.at, message, { notes }));
    }
  },
};
