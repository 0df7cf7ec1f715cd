import type { SyntaxRule } from './rule.ts';
import { span } from './rule.ts';

/** A heading made by a line of hyphens or equals signs below a text. */
export const headingUnderlined: SyntaxRule = {
  card: {
    code: 'heading-underlined',
    severity: 'error',
    title: 'A line under a text makes it a heading',
    why: 'A line of hyphens directly under a text turns the text into a heading, and a heading ends the step. Mostly a dividing line was meant.',
    bad: '::step[Free the arch edge]{#arch}\n\nLook behind the edge.\n---',
    good: '::step[Free the arch edge]{#arch}\n\nLook behind the edge.\n\n---',
  },
  stops: true,
  find: (page) =>
    page.placed.flatMap(({ node, at }) => {
      const text = page.source.text.slice(at.start, at.end);
      if (node.type !== 'heading' || !/[\r\n]/.test(text)) return [];
      const start = at.start + Math.max(text.lastIndexOf('\n'), text.lastIndexOf('\r')) + 1;
      const notes = [
        { message: 'this is read as a heading', at: span(page, { start: at.start, end: start }) },
      ];
      const message =
        'this line makes a heading of the text above it; leave an empty line between, or write ## before a heading';
      return [{ at: { start, end: at.end }, message, notes }];
    }),
};

/** Braces at a heading's end that are not one id. */
export const headingIdUnclear: SyntaxRule = {
  card: {
    code: 'heading-id-unclear',
    severity: 'error',
    title: 'The id of a heading cannot be read',
    why: 'Links and `reverse` hang on the id of a section. It stands in braces at the end of the heading, with nothing else in them.',
    bad: '## Strip down {#strip down}\n\nNothing yet.',
    good: '## Strip down {#strip-down}\n\nNothing yet.',
  },
  stops: true,
  find: (page) =>
    page.placed.flatMap(({ node, at }) => {
      const braces = /(?<!\\)\{\s*[#.][^{}]*\}$/.exec(page.source.text.slice(at.start, at.end).trimEnd());
      if (node.type !== 'heading' || node.data?.headingId || !braces) return [];
      if (node.children.at(-1)?.type !== 'text') return [];
      const start = at.start + braces.index;
      return [
        {
          at: { start, end: start + braces[0].length },
          message: 'write one id here, such as {#strip-down}: letters, digits and hyphens',
        },
      ];
    }),
};
