import type { RuleExample } from '../../diagnostics/rule-card.ts';

const picture =
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 90 60"><path d="M0 0h90v60H0z"/></svg>\n';

/** A guide whose body shows `edge.svg`, which stands beside it. */
export function pictured(body: string): RuleExample {
  return { 'example/guide.md': body, 'example/edge.svg': picture };
}
