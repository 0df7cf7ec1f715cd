import type { CutTemplate } from '../../model/cut-template.ts';
import type { Span } from '../../source/span.ts';
import { letterOf } from './resolved.ts';

/** A feature of a template with the letters of its cuts on the drawing. */
export interface Marked {
  readonly at: Span;
  readonly marks: readonly string[];
}

/** The letters of a template's features, in the order of the drawing: outlines, slots, holes, patterns. */
export function marksOf({ outlines, slots, holes, patterns }: CutTemplate): readonly Marked[] {
  const counted = [...outlines, ...slots, ...holes, ...patterns].map((feature) => ({
    at: feature.at,
    count: 'count' in feature ? feature.count : 1,
  }));
  let next = 0;
  return counted.map(({ at, count }) => {
    const marks = Array.from({ length: count }, (_, piece) => letterOf(next + piece));
    next += count;
    return { at, marks };
  });
}
