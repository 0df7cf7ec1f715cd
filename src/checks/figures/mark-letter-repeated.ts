import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import type { PageRule } from '../rule.ts';
import { pictured } from './example.ts';

const figure = (second: string) => `:::figure[The edge]{src=edge.svg alt="Edge of the trim, seen from below"}
- :mark[A]{at="20%,40%"} tip of the lever
- :mark[${second}]{at="70%,40%"} lip of the trim
:::
`;

const card: RuleCard = {
  code: 'mark-letter-repeated',
  severity: 'error',
  title: 'One letter twice on a picture',
  why: 'The key says what each letter points at. With two of a letter, the technician cannot tell which line of the key is meant, and may lever at the wrong place.',
  bad: pictured(figure('A')),
  good: pictured(figure('B')),
};

/** Every letter stands once on a picture. */
export const markLetterRepeated: PageRule = {
  card,
  runOnPage: ({ pictures }, _shop, report) => {
    for (const marks of pictures.map(({ figure }) => figure?.marks ?? [])) {
      for (const [index, { letter, at }] of marks.entries()) {
        const first = marks.findIndex((mark) => mark.letter === letter);
        const earlier = first < index ? marks[first] : undefined;
        if (!earlier) continue;
        const notes = [{ message: `the first ${letter} is here`, at: earlier.at }];
        report(
          finding(card, at, `the letter ${letter} stands twice on this picture; give each its own`, {
            notes,
          }),
        );
      }
    }
  },
};
