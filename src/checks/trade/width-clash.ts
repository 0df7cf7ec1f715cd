import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { isFixing } from '../../job/index.ts';
import { clashOfWidth as clashOf } from '../../trade/widths.ts';
import type { Rule } from '../rule.ts';

const card: RuleCard = {
  code: 'width-clash',
  severity: 'warning',
  title: 'The width across flats is not one that any standard gives the thread',
  why: 'Standards disagree about the hexagon on a thread (M10 has 16, 17, 15 or 14 mm), so Baybook never works it out. A width that none of them gives is more likely a slip, and then the tool on the list is the wrong one.',
  bad: `::tool[12 mm socket]{#socket-12 drive="hex 12"}
::fastener[Beam bolt]{#beam-bolt thread=M10x1.5 drive="hex 12"}

::step[Turn the bolt]{#bolt}

:loosen[beam-bolt]{with=socket-12} and :tighten[beam-bolt]{with=socket-12}.`,
  good: `::tool[17 mm socket]{#socket-17 drive="hex 17"}
::fastener[Beam bolt]{#beam-bolt thread=M10x1.5 drive="hex 17"}

::step[Turn the bolt]{#bolt}

:loosen[beam-bolt]{with=socket-17} and :tighten[beam-bolt]{with=socket-17}.`,
};

/** The stated hexagon of a fastener is one that some standard gives its thread. */
export const widthClash: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const item of guide.items.values()) {
      if (!isFixing(item) || !item.drive || !item.thread || !('across' in item.drive.value)) continue;
      // Held against that one alone, by a rule of its own.
      if (item.standard || item.unknown.has('standard')) continue;
      const clash = clashOf(item.drive.value, item.thread.value);
      if (clash === undefined) continue;
      const notes = [{ message: 'the thread is stated here', at: item.thread.at }];
      report(finding(card, item.drive.at, `for the ${item.noun.singular}, ${clash}`, { notes }));
    }
  },
};
