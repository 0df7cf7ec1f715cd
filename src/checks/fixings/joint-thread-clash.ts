import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { isFixing } from '../../job/index.ts';
import type { Fastener, KitItem } from '../../model/item.ts';
import type { Rule } from '../rule.ts';

const joint = (nut: string) => `::tool[13 mm socket]{#socket-13 drive="hex 13"}
::kit[Bar]{#bar}
::kit[Bar bolt]{#bolt thread=M8x1.25 drive="hex 13" holds=bar stack="bar nut" with=socket-13}
::kit[Lock nut]{#nut thread=${nut} drive="hex 13" with=socket-13}

::step[Hang the bar]{#hang}

:fit[bar], :start[bolt] and :start[nut]. Then :tighten[nut] and :tighten[bolt].`;

const card: RuleCard = {
  code: 'joint-thread-clash',
  severity: 'error',
  title: 'A nut has another thread than the bolt that it goes on',
  why: 'A nut of another size does not go on; one of another pitch goes on for two turns, binds, and spoils both threads.',
  bad: joint('M8x1'),
  good: joint('M8x1.25'),
};

/** Whatever has a thread in the stack of a bolt has the thread of that bolt. */
export const jointThreadClash: Rule = {
  card,
  run: ({ guide: { items } }, report) => {
    for (const bolt of items.values()) {
      if (!isFixing(bolt) || !bolt.thread) continue;
      const told = new Set<string>();
      for (const { value } of bolt.stack) {
        const piece = items.get(value);
        if (!piece || !isFixing(piece) || !piece.thread || told.has(value) || fits(bolt, piece)) continue;
        told.add(value);
        const message = `the ${piece.noun.singular} has ${piece.thread.value.name}, and the ${bolt.noun.singular} that it goes on has ${bolt.thread.value.name}`;
        const notes = [
          { message: `the thread of the ${bolt.noun.singular} is stated here`, at: bolt.thread.at },
        ];
        report(finding(card, piece.thread.at, message, { notes }));
      }
    }
  },
};

/** A washer or spacer is named by the size of its bolt and has no pitch. */
function fits({ thread }: Fastener | KitItem, piece: Fastener | KitItem): boolean {
  if (!thread || !piece.thread) return true;
  const pitchless = /\b(?:washer|spacer|sleeve|plate)s?\b/i.test(piece.noun.label);
  return pitchless
    ? thread.value.size === piece.thread.value.size
    : thread.value.name === piece.thread.value.name;
}
