import { finding, type RuleCard } from '../diagnostics/rule-card.ts';
import type { PageRule } from './rule.ts';

const picture = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 90 60"><path d="M0 0h90v60z"/></svg>\n';

const card: RuleCard = {
  code: 'alt-missing',
  severity: 'error',
  title: 'A picture without words for it',
  why: 'Who cannot see the picture (a reader with poor sight, a screen that did not load it, a poor print) needs in words what it shows.',
  bad: { 'example/guide.md': ':::figure[The edge]{src=edge.svg}\n:::\n', 'example/edge.svg': picture },
  good: {
    'example/guide.md': ':::figure[The edge]{src=edge.svg alt="Edge of the trim, seen from below"}\n:::\n',
    'example/edge.svg': picture,
  },
};

/** Every picture has a text that says what it shows. */
export const altMissing: PageRule = {
  card,
  runOnPage: (page, _shop, report) => {
    for (const { alt, src, figure } of page.pictures) {
      if (alt !== null && alt.value.trim() !== '') continue;
      const where = figure ? 'alt="…"' : 'in the brackets, ![…]';
      report(finding(card, alt?.at ?? src.at, `this picture needs words that say what it shows: ${where}`));
    }
  },
};
