import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { placeMarks } from '../../drawings/place-marks.ts';
import type { PageRule } from '../rule.ts';
import { pictured } from './example.ts';

const figure = (
  at: string,
) => `:::figure[The edge]{src=edge.svg alt="Edge of the trim" crop="50%,0%,100%,100%"}
- :mark[A]{at="${at}"} tip of the lever
:::
`;

const card: RuleCard = {
  code: 'mark-outside-picture',
  severity: 'error',
  title: 'A mark outside the part of the picture that is shown',
  why: 'Marks are placed on the whole picture, and a crop takes some of it away. A letter whose place is gone stands in the key and points at nothing.',
  bad: pictured(figure('20%,40%')),
  good: pictured(figure('70%,40%')),
};

/** Any size will do here: places are fractions of it. */
const anySize = { width: 1, height: 1 };

/** Every mark points into the part of its picture that is shown. */
export const markOutsidePicture: PageRule = {
  card,
  runOnPage: ({ pictures }, _shop, report) => {
    for (const { figure } of pictures) {
      const shown = figure?.crop?.value ?? null;
      for (const mark of figure?.marks ?? []) {
        if (placeMarks([mark], anySize, shown).outside.length === 0) continue;
        const notes = figure?.crop ? [{ message: 'this is what is shown', at: figure.crop.at }] : [];
        const message = `the mark ${mark.letter} points outside the ${shown ? 'part that is shown' : 'picture'}`;
        report(finding(card, mark.at, message, { notes }));
      }
    }
  },
};
