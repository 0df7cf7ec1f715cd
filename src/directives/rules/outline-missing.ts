import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { outlineExample, templateExample } from './template-example.ts';

export const outlineMissing: RuleCard = {
  code: 'outline-missing',
  severity: 'error',
  title: "The maker's drawing of an outline is not there",
  why: 'An outline that is read from a drawing is only as good as the drawing; without it there is nothing to cut along.',
  bad: templateExample('::outline{from=notch.dxf}'),
  good: templateExample(outlineExample),
};
