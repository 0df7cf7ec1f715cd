import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { isFixing } from '../../job/index.ts';
import { clashOfWidth, widthStandardNamed } from '../../trade/widths.ts';
import type { Rule } from '../rule.ts';

const guide = (across: number) => `::tool[${across} mm socket]{#socket drive="hex ${across}"}
::fastener[Beam bolt]{#beam-bolt thread=M10x1.5 drive="hex ${across}" standard="ISO 4014"}

::step[Turn the bolt]{#bolt}

:loosen[beam-bolt]{with=socket} and :tighten[beam-bolt]{with=socket}.`;

const card: RuleCard = {
  code: 'width-not-standard',
  severity: 'error',
  title: 'The width across flats is not what the named standard gives the thread',
  why: 'A bolt after DIN 931 and one after ISO 4014 look alike and want different sockets. Where the author has said which it is, the width is either right or a slip, and the wrong socket rounds the head.',
  bad: guide(17),
  good: guide(16),
};

/** The stated hexagon of a fastener is the one that its own standard gives its thread. */
export const widthNotStandard: Rule = {
  card,
  run: ({ guide: { items } }, report) => {
    for (const item of items.values()) {
      if (!isFixing(item) || !item.standard || !item.drive || !item.thread) continue;
      const standard = widthStandardNamed(item.standard.value);
      if (!standard || !('across' in item.drive.value)) continue;
      const clash = clashOfWidth(item.drive.value, item.thread.value, standard);
      if (clash === undefined) continue;
      const notes = [
        { message: 'the standard is named here', at: item.standard.at },
        { message: 'the thread is stated here', at: item.thread.at },
      ];
      report(finding(card, item.drive.at, `for the ${item.noun.singular}, ${clash}`, { notes }));
    }
  },
};
