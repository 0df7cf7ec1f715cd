import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { templateExample } from './template-example.ts';

export const patternShapeless: RuleCard = {
  code: 'pattern-shapeless',
  severity: 'error',
  title: 'A hole pattern has no line and no circle, or both',
  why: 'Holes are spaced along a line between two points, or on a circle about a centre.',
  bad: templateExample('::pattern[Vent holes]{count=6 diameter="5 mm"}'),
  good: templateExample('::pattern[Vent holes]{count=6 diameter="5 mm" along="0,20 100,20" unit=mm}'),
};
