import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { judgeClearanceHole } from '../../trade/holes.ts';
import type { Rule } from '../rule.ts';
import { boltedTemplate } from './example-template.ts';
import { causeOfHole, threadedHoles, threadNotes } from './holes.ts';

const card: RuleCard = {
  code: 'clearance-hole-large',
  severity: 'warning',
  title: 'A hole is larger than any clearance hole for its bolt',
  why: 'Above the coarse series (ISO 273, ASME B18.2.8) little is left under the head, and a plain washer pulls through thin sheet. Some kits mean it, with a plate behind.',
  bad: boltedTemplate('12 mm'),
  good: boltedTemplate('10 mm'),
};

/** No hole for a threaded fastener is larger than the standards’ widest. */
export const clearanceHoleLarge: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const hole of threadedHoles(guide)) {
      if (hole.rivetNut) continue;
      const fit = judgeClearanceHole(hole.size, hole.thread.value);
      if (fit?.verdict !== 'large') continue;
      report(
        finding(card, hole.feature.at, fit.message, { notes: threadNotes(hole), cause: causeOfHole(hole) }),
      );
    }
  },
};
