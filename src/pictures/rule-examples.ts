import type { RuleExample } from '../diagnostics/rule-card.ts';

/** A guide that shows one file beside it. Files are text; those that stand for pictures hold bytes below 128 only. */
export function example(name: string, content: string): RuleExample {
  return {
    'example/guide.md': `![Rear edge of the arch trim](pictures/${name})\n`,
    [`example/pictures/${name}`]: content,
  };
}

/** A drawing with the given shapes. */
export function exampleDrawing(shapes: string): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 60">${shapes}</svg>\n`;
}
