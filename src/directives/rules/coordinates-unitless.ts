import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { outlineExample, templateExample } from './template-example.ts';

export const coordinatesUnitless: RuleCard = {
  code: 'coordinates-unitless',
  severity: 'error',
  title: 'Coordinates stand without a unit',
  why: 'A drawing read in the wrong unit is out by a factor of 25, and the panel with it.',
  bad: templateExample(outlineExample.replace(' unit=mm', '')),
  good: templateExample(outlineExample),
};
