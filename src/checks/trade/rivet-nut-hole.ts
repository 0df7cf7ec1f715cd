import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { judgeRivetNutHole } from '../../trade/holes.ts';
import type { Rule } from '../rule.ts';
import { rivetNutTemplate } from './example-template.ts';
import { causeOfHole, threadedHoles, threadNotes } from './holes.ts';

const card: RuleCard = {
  code: 'rivet-nut-hole',
  severity: 'warning',
  title: 'A hole is unusual for its rivet nut',
  why: 'A rivet nut in a hole that is too wide spins and cannot be got out, and one in a tight hole does not go in. Makers differ, so their sheet decides and this only asks for a second look.',
  bad: rivetNutTemplate('9 mm'),
  good: rivetNutTemplate('11 mm'),
};

/** Every hole for a rivet nut lies within what makers give for its thread. */
export const rivetNutHole: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const hole of threadedHoles(guide)) {
      const fit = hole.rivetNut ? judgeRivetNutHole(hole.size, hole.thread.value) : undefined;
      if (!fit || fit.verdict === 'fits') continue;
      report(
        finding(card, hole.feature.at, fit.message, { notes: threadNotes(hole), cause: causeOfHole(hole) }),
      );
    }
  },
};
