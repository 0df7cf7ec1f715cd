import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { judgeClearanceHole, tapDrill } from '../../trade/holes.ts';
import type { Rule } from '../rule.ts';
import { boltedTemplate } from './example-template.ts';
import { causeOfHole, type ThreadedHole, threadedHoles, threadNotes } from './holes.ts';

const card: RuleCard = {
  code: 'clearance-hole-small',
  severity: 'error',
  title: 'A bolt does not pass the hole that is drilled for it',
  why: 'A clearance hole is wider than its bolt (ISO 273, ASME B18.2.8). One of the bolt’s own size binds, cuts into the thread, and leaves nothing for a row of holes to be out of true.',
  bad: boltedTemplate('8 mm'),
  good: boltedTemplate('9 mm'),
};

/** Every hole for a threaded fastener lets it pass, or is the drill for tapping its thread. */
export const clearanceHoleSmall: Rule = {
  card,
  run: ({ guide }, report) => {
    const taps = [...guide.items.values()].some(
      ({ kind, noun }) => kind === 'tool' && /\btaps?\b/i.test(noun.label),
    );
    for (const hole of threadedHoles(guide)) {
      const fit = hole.rivetNut ? undefined : judgeClearanceHole(hole.size, hole.thread.value);
      if (fit?.verdict !== 'too-small' || (isTapDrill(hole) && taps)) continue;
      const tapped = isTapDrill(hole) ? '; to tap it, declare the tap among the tools' : '';
      report(
        finding(card, hole.feature.at, `${fit.message}${tapped}`, {
          notes: threadNotes(hole),
          cause: causeOfHole(hole),
        }),
      );
    }
  },
};

/** A drill of the tapping size cuts up to a tenth large (common practice, no source). */
function isTapDrill({ size, thread }: ThreadedHole): boolean {
  const drill = tapDrill(thread.value);
  return drill !== undefined && Math.abs(size.base - drill) <= 0.1;
}
