import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { outlineExample, templateExample } from './template-example.ts';

export const outlineShapeless: RuleCard = {
  code: 'outline-shapeless',
  severity: 'error',
  title: 'An outline has no shape',
  why: 'An outline needs its points, or the drawing that the maker of the accessory supplies.',
  bad: templateExample('::outline{unit=mm}'),
  good: templateExample(outlineExample),
};
