import type { RuleCard } from '../../diagnostics/rule-card.ts';

/** Steps of one guide at most, those of its procedures counted with it and reversed ones not: a bound of ours. */
export const mostSteps = 250;

/** Characters of text at most that the procedures of one guide bring, each as often as it is placed: a bound of ours. */
export const mostPlacedText = 400_000;

export const tooManySteps = `this guide has more than ${mostSteps} steps, those of its procedures counted with it; make several guides of it, and a visit of these`;

export const tooMuchText = `this guide places more than ${mostPlacedText / 1000} thousand characters of procedures, each counted as often as it is placed; make several guides of it, and a visit of these`;

const step = (number: number) => `::step[Look]{#look-${number}}\n\nLook at it.\n\n`;

export const guideTooLong: RuleCard = {
  code: 'guide-too-long',
  severity: 'error',
  costs: 'procedure',
  title: 'A guide beyond all use',
  why: 'Each step is held against all others, so that the work grows with the square of their number. Nobody does hundreds of steps in one go: several guides on one vehicle make a visit.',
  bad: `## Look {#look}\n\n${Array.from({ length: mostSteps + 1 }, (_, number) => step(number)).join('')}`,
  good: `## Look {#look}\n\n${step(1)}`,
};
