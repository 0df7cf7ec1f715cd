import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { signalPanel } from '../../trade/signal-words.ts';
import type { Rule } from '../rule.ts';
import { messagesWritten } from './messages-written.ts';

const guide = (text: string) => ({
  'shop.yaml': 'name: Example Fitting\nsignal-words: iso\n',
  'example/guide.md': `::step[Ease the panel off]{#ease}\n\n${text}Ease the panel off.`,
});

const card: RuleCard = {
  code: 'signal-word-foreign',
  severity: 'warning',
  title: 'A signal word is not one of the shop’s scheme',
  why: 'ISO 3864-2 knows DANGER, WARNING and CAUTION, all three for injury. A shop that holds to it says what can be damaged in the text of the step, so that no reader looks for a word that the scheme does not have.',
  bad: guide(':::notice[Scratched paint]\nThe clips scratch the paint. Tape the edge first.\n:::\n\n'),
  good: guide('Tape the edge first: the clips scratch the paint. '),
};

/** Every message has a word in the scheme that `shop.yaml` names. */
export const signalWordForeign: Rule = {
  card,
  run: ({ guide, shop }, report) => {
    for (const { message } of messagesWritten(guide)) {
      if (signalPanel(message.word, shop.settings.signalWords).word !== '') continue;
      const text = `${message.word.toUpperCase()} is no word of ISO 3864, which this shop holds to, so this is printed without one; say it in the text of the step`;
      report(finding(card, message.at, text));
    }
  },
};
