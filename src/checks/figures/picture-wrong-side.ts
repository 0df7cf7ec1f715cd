import type { Report } from '../../diagnostics/report.ts';
import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { inlinesOf, isCounted, stepsOf } from '../../job/index.ts';
import type { Figure } from '../../model/block.ts';
import type { Guide } from '../../model/guide.ts';
import type { Rule } from '../rule.ts';
import { pictured } from './example.ts';

const step = (shows: string) => `::step[Look behind the left edge]{#look side=left}

Look behind the edge.

:::figure[The edge]{src=edge.svg alt="Edge of the trim, seen from below" shows=${shows}}
:::
`;

const card: RuleCard = {
  code: 'picture-wrong-side',
  severity: 'error',
  title: 'A picture of the side on which nothing is done',
  why: 'The step is done on one side of the vehicle only, and its picture says that it shows the other. One of the two is wrong, and the technician would begin at the wrong side.',
  bad: pictured(step('right')),
  good: pictured(step('left')),
};

/** A step that is done on one side shows that side, and a picture of one side marks nothing that is on the other. */
export const pictureWrongSide: Rule = {
  card,
  run: ({ guide }, report) => {
    const { words } = guide;
    for (const { side, blocks, origins } of stepsOf(guide)) {
      const isWritten = !origins.some(({ kind }) => kind === 'reverse');
      for (const block of blocks) {
        if (block.type !== 'figure' || !block.shows) continue;
        if (isWritten) reportMarks(block, guide, report);
        if (!side || side.value === 'each' || block.shows.value === side.value) continue;
        const message = `this picture shows the ${words[block.shows.value]} side, and its step is done on the ${words[side.value]} side only`;
        const notes = [{ message: 'the side of the step is said here', at: side.at }];
        report(finding(card, block.shows.at, message, { notes }));
      }
    }
  },
};

/** Marks on what is declared for the other side alone. */
function reportMarks({ shows, marks }: Figure, { items, words }: Guide, report: Report): void {
  for (const { text } of marks) {
    for (const { node } of inlinesOf(text)) {
      const item = items.get(node.target.value);
      if (!shows || !item || !isCounted(item) || !item.side || item.unknown.has('side')) continue;
      if (item.side.value === 'each' || item.side.value === shows.value) continue;
      const message = `this picture shows the ${words[shows.value]} side, and the ${item.noun.singular} is declared for the ${words[item.side.value]}`;
      const notes = [{ message: 'its side is declared here', at: item.side.at }];
      report(finding(card, node.at, message, { notes }));
    }
  }
}
