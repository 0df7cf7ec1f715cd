import { isUnsafeAddress } from '../address.ts';
import type { SyntaxRule } from './rule.ts';

/** A link that would run code. */
export const linkUnsafe: SyntaxRule = {
  card: {
    code: 'link-unsafe',
    severity: 'error',
    title: 'A link that would run code',
    why: "An address that begins with javascript:, vbscript: or data: runs something on the reader's device when it is touched. Baybook never puts one on a page.",
    bad: 'See [the drawing](javascript:open()).',
    good: 'See [the drawing](https://example.com/drawing.pdf).',
  },
  stops: false,
  find: (page) =>
    page.placed.flatMap(({ node, at }) => {
      if (node.type !== 'link' && node.type !== 'image' && node.type !== 'definition') return [];
      return isUnsafeAddress(node.url)
        ? [{ at, message: 'this address would run code; it is left out' }]
        : [];
    }),
};
