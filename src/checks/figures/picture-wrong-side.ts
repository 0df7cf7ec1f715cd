import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { stepsOf } from '../../job/index.ts';
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

/** A step that is done on one side shows that side. */
export const pictureWrongSide: Rule = {
  card,
  run: ({ guide }, report) => {
    const { words } = guide;
    for (const { side, blocks } of stepsOf(guide)) {
      if (!side || side.value === 'each') continue;
      for (const block of blocks) {
        if (block.type !== 'figure' || !block.shows || block.shows.value === side.value) continue;
        const message = `this picture shows the ${words[block.shows.value]} side, and its step is done on the ${words[side.value]} side only`;
        const notes = [{ message: 'the side of the step is said here', at: side.at }];
        report(finding(card, block.shows.at, message, { notes }));
      }
    }
  },
};
