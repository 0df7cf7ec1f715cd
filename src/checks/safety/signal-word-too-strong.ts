import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import type { Rule } from '../rule.ts';
import { isMereDamage } from './injury.ts';
import { comparableWords, messagesWritten } from './messages-written.ts';

const step = (word: string) =>
  `::step[Ease the panel off]{#ease}\n\n:::${word}[Scratched paint]\nThe clips scratch the paint when the panel slides down. Tape the edge first.\n:::\n\nEase the panel off.`;

const card: RuleCard = {
  code: 'signal-word-too-strong',
  severity: 'error',
  title: 'DANGER or WARNING stands over mere damage',
  why: 'DANGER says that somebody will die or be badly hurt, WARNING that somebody could (ANSI Z535.6, ISO 3864-2). Over scratched paint they teach that the words mean nothing.',
  bad: step('danger'),
  good: step('notice'),
};

/** DANGER and WARNING are about people. */
export const signalWordTooStrong: Rule = {
  card,
  run: ({ guide, shop }, report) => {
    for (const written of messagesWritten(guide)) {
      const { word, at } = written.message;
      if (word !== 'danger' && word !== 'warning') continue;
      if (!isMereDamage(comparableWords(written, guide))) continue;
      const instead = shop.settings.signalWords === 'ansi' ? ':::notice' : 'the text of the step';
      const message = `${word.toUpperCase()} is about injury, and this speaks of damage; say it in ${instead}, or say who gets hurt`;
      report(finding(card, at, message));
    }
  },
};
