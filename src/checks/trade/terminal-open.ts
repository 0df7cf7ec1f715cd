import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { actionsOf, stepsOf } from '../../job/index.ts';
import { sentencesOf } from '../language/sentences.ts';
import { isWritten } from '../language/written.ts';
import type { Rule } from '../rule.ts';

const guide = (work: string) =>
  `::fastener[Earth bolt]{#earth-bolt}\n\n::step[Earth the loom]{#earth}\n\n${work}`;

const card: RuleCard = {
  code: 'terminal-open',
  severity: 'warning',
  title: 'A fork terminal goes under a bolt that is only loosened',
  why: 'A fork slides out from under a bolt that works loose, and the earth with it: lamps dim, modules fail, a lead lies bare. A ring stays on the bolt; it asks for taking the bolt out (common practice, no source).',
  bad: guide(
    ':loosen[earth-bolt], push the fork of the earth lead under its head, and :tighten[earth-bolt].',
  ),
  good: guide(
    ':remove[earth-bolt], put the ring of the earth lead on it, and :refit[earth-bolt]. Hold the lead still meanwhile.',
  ),
};

const fork = /\b(?:fork|forked|spade)\b/;
const lead = /\b(?:earth|ground|terminal|lead|loom|cable|wire|battery)\b/;

/** What is clamped under a bolt of a lead is a ring. */
export const terminalOpen: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const step of stepsOf(guide).filter(isWritten)) {
      const actions = actionsOf(step).map(({ node }) => node);
      const loosened = actions.find(({ verb }) => verb === 'loosen');
      if (!loosened || actions.some(({ verb }) => verb === 'remove')) continue;
      const texts = step.blocks.flatMap((block) =>
        block.type === 'prose'
          ? sentencesOf(block.content, guide, null).map(({ words }) => words.map((one) => one.text).join(' '))
          : [],
      );
      if (!texts.some((text) => fork.test(text) && lead.test(text))) continue;
      const message =
        'a fork goes under a bolt that is only loosened, and slides out when it works loose; take the bolt out and use a ring';
      report(finding(card, loosened.at, message));
    }
  },
};
