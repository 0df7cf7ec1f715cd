import { afterName } from '../explain-broken.ts';
import type { PlacedNode, SyntaxFault, SyntaxPage, SyntaxRule } from './rule.ts';
import { nameOf, span } from './rule.ts';

const step = '::tool[Trim lever]{#trim-lever}\n::step[Free the arch edge]{#arch}\n\n';
const good = `${step}Work the :tool[trim-lever]{as=lever} behind the edge.`;

/** A directive within a sentence whose label or attributes are left behind as text. */
export const directiveHalfRead: SyntaxRule = {
  card: {
    code: 'directive-half-read',
    severity: 'error',
    title: 'Part of a directive is read as ordinary text',
    why: 'With a space or a line break before the braces, or with something in them that cannot be read, the action stays and its tools are printed as text.',
    bad: `${step}Work the :tool[trim-lever] {as=lever} behind the edge.`,
    good,
  },
  stops: true,
  find: (page) => [...bracesLeft(page), ...bracketsLeft(page)],
};

/** Text that begins with a brace right after a directive. */
function bracesLeft(page: SyntaxPage): SyntaxFault[] {
  return page.placed.flatMap(({ node, at, parents }) => {
    if (node.type !== 'textDirective') return [];
    const gap = /^\s*\{/.exec(page.source.text.slice(at.end));
    const next = siblingAfter(node, parents);
    if (!gap || next?.type !== 'text' || !/^\s*\{/.test(next.value)) return [];
    const brace = at.end + gap[0].length - 1;
    if (brace > at.end) {
      const message = `the braces belong to ${nameOf(node)} and must follow it directly, with no space or line break`;
      const between = { start: at.end, end: brace };
      return [{ at: between, message, suggestion: { at: span(page, between), text: '' } }];
    }
    return [halfRead(page, node, brace, at.end)];
  });
}

/** A known name whose label could not be read, so that nothing of it is left but text. */
function bracketsLeft(page: SyntaxPage): SyntaxFault[] {
  return page.placed.flatMap(({ node, at, parents }) => {
    if (node.type !== 'text' || parents.at(-1)?.type === 'textDirective') return [];
    const written = page.source.text.slice(at.start, at.end);
    return [...written.matchAll(/(?<![\p{L}\p{N}:\\]):([\p{L}\p{N}_-]+)([[{(]| +\[)/gu)].flatMap((match) => {
      const [whole, name = '', bracket] = match;
      if (!page.names.text.has(name)) return [];
      const from = at.start + match.index;
      const end = from + whole.length;
      if (bracket === '(') {
        const message = `write square brackets after :${name}, as in :${name}[…]`;
        return [
          {
            at: { start: end - 1, end },
            message,
            suggestion: { at: span(page, { start: end - 1, end }), text: '[' },
          },
        ];
      }
      const rest = end - (bracket?.length ?? 1);
      return [halfRead(page, { type: 'textDirective', name, children: [] }, rest, from)];
    });
  });
}

/** How far a label and attributes within a sentence are followed, in characters. */
const farthest = 1000;

function halfRead(page: SyntaxPage, node: PlacedNode['node'], from: number, begin: number): SyntaxFault {
  // The rest of the paragraph, as one line: a label and attributes within a sentence may run over a line's end.
  const ahead = page.source.text.slice(from, from + farthest);
  const rest = (ahead.split(/\r?\n[ \t]*\r?\n/)[0] ?? '').replace(/[\r\n]/g, ' ');
  const cause = afterName(rest, 0);
  const at = { start: from + cause.start, end: Math.min(from + cause.end, from + rest.length) };
  const message = `part of this ${nameOf(node)} is read as text: ${cause.message}`;
  return { at, message, covers: [{ start: begin, end: at.end }] };
}

function siblingAfter(
  node: PlacedNode['node'],
  parents: PlacedNode['parents'],
): PlacedNode['node'] | undefined {
  const siblings: readonly PlacedNode['node'][] = parents.at(-1)?.children ?? [];
  return siblings[siblings.indexOf(node) + 1];
}

/** The text form with attributes and no label. */
export const directiveUnlabelled: SyntaxRule = {
  card: {
    code: 'directive-unlabelled',
    severity: 'error',
    title: 'A directive in a sentence without its square brackets',
    why: 'Within a sentence a colon is ordinary. Only square brackets make a directive of it, and without them nobody can say whether an action was meant.',
    bad: `${step}Work the :tool{#trim-lever} behind the edge.`,
    good,
  },
  stops: true,
  find: (page) =>
    page.placed.flatMap(({ node, at }) => {
      if (node.type !== 'textDirective' || node.data?.directive?.brackets.length) return [];
      const message = `${nameOf(node)} lacks its label; write ${nameOf(node)}[…] with what it names in square brackets`;
      return [{ at, message, covers: [at] }];
    }),
};
