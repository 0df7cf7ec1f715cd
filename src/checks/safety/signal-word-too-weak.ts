import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import type { Rule } from '../rule.ts';
import { isInjury } from './injury.ts';
import { comparableWords, messagesWritten } from './messages-written.ts';

const step = (word: string) =>
  `::step[Draw the panel back]{#draw}\n\n:::${word}[Sharp edge]\nThe lip of the panel can cut a finger. Keep your hands on the outside.\n:::\n\nDraw the panel back.`;

const card: RuleCard = {
  code: 'signal-word-too-weak',
  severity: 'error',
  title: 'NOTICE stands over an injury',
  why: 'NOTICE says that nobody gets hurt (ANSI Z535.6), and it has no safety alert symbol. An injury, however small, asks for CAUTION at least.',
  bad: step('notice'),
  good: step('caution'),
};

/** NOTICE is about things. */
export const signalWordTooWeak: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const written of messagesWritten(guide)) {
      const { word, at } = written.message;
      if (word !== 'notice' || !isInjury(comparableWords(written, guide))) continue;
      report(finding(card, at, 'NOTICE is about damage, and this speaks of injury; use :::caution at least'));
    }
  },
};
