import type { Fault, Placed, SyntaxRule } from './rule.ts';

/** HTML in the text, which is not taken over. */
export const htmlDropped: SyntaxRule = {
  card: {
    code: 'html-dropped',
    severity: 'error',
    title: 'HTML in the text',
    why: 'A guide is printed, shown on a phone and drawn as a job sheet, and HTML would break in one of them. Baybook leaves it out, so what it held may be lost.',
    bad: 'The lip is <b>brittle</b>.',
    good: 'The lip is **brittle**. <!-- Ask the paint shop about the primer. -->',
  },
  stops: false,
  find: (page) => page.placed.flatMap(html),
};

function html({ node, at }: Placed): Fault[] {
  if (node.type !== 'html') return [];
  const left = node.value.replace(/<!--[\s\S]*?-->/g, '').trim();
  if (left === '' || /^<\/[^<]*$/.test(left)) return [];
  if (left.startsWith('<!--')) {
    return [
      {
        at: { start: at.start, end: at.start + 4 },
        message: 'this comment is never closed, and hides the rest of the text; end it with -->',
      },
    ];
  }
  const tag = /^<[^\s>]*/.exec(left)?.[0] ?? left;
  return [
    {
      at,
      message: `HTML is left out of a guide: ${tag}${left === tag ? '' : '…'}; write it in Markdown, or write \\< for the sign itself`,
    },
  ];
}

/** A directive in a picture's alternative text. */
export const altDirective: SyntaxRule = {
  card: {
    code: 'alt-directive',
    severity: 'error',
    title: "A directive in a picture's alternative text",
    why: 'Alternative text is words alone: what stands there cannot be counted or printed from its declaration.',
    bad: 'A bracket ![The :tool[trim-lever] behind the edge](edge.svg)',
    good: 'Ordinary text.',
  },
  stops: false,
  find: (page) =>
    page.placed.flatMap(({ node }) =>
      (node.data?.directivesInAlt ?? []).map((at) => ({
        at,
        message: 'alternative text is words alone; name it here in plain words',
      })),
    ),
};
