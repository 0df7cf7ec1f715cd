import type { PlacedNode, SyntaxFault, SyntaxRule } from './rule.ts';

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
  find: (page) => {
    const opened = new Set(page.placed.flatMap(({ node }) => tagsOf(node)));
    return page.placed.flatMap((placed) => html(placed, opened));
  },
};

/** The names of the elements that a piece of HTML opens. */
function tagsOf(node: PlacedNode['node']): string[] {
  if (node.type !== 'html') return [];
  return [...node.value.matchAll(/<([a-z][a-z0-9-]*)/gi)].map(([, name = '']) => name.toLowerCase());
}

function html({ node, at }: PlacedNode, opened: ReadonlySet<string>): SyntaxFault[] {
  if (node.type !== 'html') return [];
  const left = node.value.replace(/<!--[\s\S]*?-->/g, '').trim();
  if (left === '') return [];
  // One finding for an element: its end needs none of its own.
  const end = /^<\/([a-z][a-z0-9-]*)\s*>$/i.exec(left);
  if (end && opened.has((end[1] ?? '').toLowerCase())) return [];
  if (left.startsWith('<!--')) {
    const message = 'this comment is never closed, and hides the rest of the text; end it with -->';
    return [{ at: { start: at.start, end: at.start + 4 }, message }];
  }
  const tag = /^<[^\s>]*>?/.exec(left)?.[0] ?? left;
  const message = `HTML is left out of a guide (${tag}${tag.endsWith('>') || tag === left ? '' : '…'}); write it in Markdown, or write \\< for the sign itself`;
  return [{ at, message }];
}

const withPicture = (body: string) => ({
  'example/guide.md': body,
  'example/edge.svg':
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 90 60"><path d="M0 0h90v60z"/></svg>\n',
});

/** A directive in a picture's alternative text. */
export const altDirective: SyntaxRule = {
  card: {
    code: 'alt-directive',
    severity: 'error',
    title: "A directive in a picture's alternative text",
    why: 'Alternative text is words alone: what stands there cannot be counted or printed from its declaration.',
    bad: withPicture('![The :tool[trim-lever] behind the edge](edge.svg)'),
    good: withPicture('![The trim lever behind the edge](edge.svg)'),
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
