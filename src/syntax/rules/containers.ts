import type { Range } from '../directive-places.ts';
import { strayFences } from './directive-unreadable.ts';
import type { PlacedNode, SyntaxFault, SyntaxPage, SyntaxRule } from './rule.ts';
import { nameOf, openingOf, span } from './rule.ts';

const note = ':::note\nThe lip is brittle.\n:::';
const step = '::step[Free the arch edge]{#arch}\n\nLook behind the edge.';

/** A step, a heading, or a directive in a list, that something else holds. */
export const openingEnclosed: SyntaxRule = {
  card: {
    code: 'opening-enclosed',
    severity: 'error',
    title: 'A step or heading is shut inside something else',
    why: 'A step or a heading opens only at the left edge of the file. Inside a container, a list or a quotation it opens nothing, and what follows belongs to the step before. Most often a closing `:::` is missing further up.',
    bad: `:::note\nThe lip is brittle.\n\n${step}\n\n:::`,
    good: `${note}\n\n${step}`,
  },
  stops: true,
  find: (page) => {
    const told = new Set<unknown>();
    return page.placed.flatMap((placed) => {
      const holder = holderOf(placed);
      if (!holder || told.has(holder) || !isContainer(page, holder)) return [];
      told.add(holder);
      return enclosed(page, placed, holder);
    });
  },
};

/** A container without its closing fence. */
export const containerUnclosed: SyntaxRule = {
  card: {
    code: 'container-unclosed',
    severity: 'error',
    title: 'A container that is never closed',
    why: 'Everything up to the next closing fence, or to the end of the file, is taken into a container that is not closed: a caution would swallow the steps after it.',
    bad: `${step}\n\n:::note\nThe lip is brittle.`,
    good: `${step}\n\n${note}`,
  },
  stops: true,
  find: (page) => {
    const byName = page.placed.flatMap((placed) => closedByName(page, placed));
    // After one of these the fences no longer tell what was meant.
    if (byName.length > 0) return byName;
    return page.placed
      .filter(
        ({ node, parents }) => isOpen(node) && [node, ...parents].every((one) => isContainer(page, one)),
      )
      .map((placed) => unclosed(page, placed));
  },
};

/** What is written as a container and is none is told by its name, and what it swallows is only an echo. */
function isContainer({ names }: SyntaxPage, node: PlacedNode['node']): boolean {
  return node.type !== 'containerDirective' || names.container.has(node.name);
}

type Holder = PlacedNode['parents'][number];

/** What shuts a step, a heading or a directive in; `null` where it stands free. */
function holderOf({ node, parents }: PlacedNode): Holder | null {
  const inText = parents.findLast(({ type }) => ['list', 'blockquote', 'footnoteDefinition'].includes(type));
  if (node.type === 'leafDirective' || node.type === 'containerDirective' || node.type === 'heading') {
    if (inText) return inText;
  }
  if (node.type !== 'heading' && !(node.type === 'leafDirective' && node.name === 'step')) return null;
  return parents.find(({ type }) => type === 'containerDirective') ?? null;
}

function enclosed(page: SyntaxPage, placed: PlacedNode, holder: Holder): SyntaxFault[] {
  const at = openingOf(page, placed);
  const start = holder.position?.start.offset ?? 0;
  const end = holder.position?.end.offset ?? start;
  const opening = openingOf(page, { node: holder, at: { start, end }, parents: [] });
  const begin = { message: `${held[holder.type] ?? nameOf(holder)} begins here`, at: span(page, opening) };
  const notes = /[\r\n]/.test(page.source.text.slice(start, at.start)) ? [begin] : [];
  const what = placed.node.type === 'heading' ? 'this heading' : nameOf(placed.node);
  if (holder.type !== 'containerDirective') {
    const message = `${what} stands inside ${held[holder.type]}; begin it at the left edge, after an empty line`;
    return [{ at, message, notes, covers: [{ start, end }] }];
  }
  // A container that never closes is reported by its opening, which is where the mend is.
  if (isOpen(holder)) return [];
  const message = `${what} stands inside ${nameOf(holder)}; close that with a line of colons before it`;
  const inner = page.placed.filter(({ node, parents }) => isOpen(node) && parents.includes(holder));
  return [{ at, message, notes, covers: [opening, ...inner.map((one) => openingOf(page, one))] }];
}

const held: { readonly [type: string]: string } = {
  list: 'a list',
  blockquote: 'a quotation',
  footnoteDefinition: 'a footnote',
};

function isOpen(node: PlacedNode['node']): boolean {
  return node.type === 'containerDirective' && (node.data?.directive?.fences.length ?? 0) < 2;
}

/** A container that is to be closed by its name, as in `:::note … :::note`, which opens another. */
function closedByName(page: SyntaxPage, placed: PlacedNode): SyntaxFault[] {
  const { node, parents } = placed;
  const at = openingOf(page, placed);
  const outer = parents.find((one) => one.type === 'containerDirective' && nameOf(one) === nameOf(node));
  if (!outer || page.source.text.slice(at.start, at.end).trimEnd() !== nameOf(node)) return [];
  const message = `this opens another ${nameOf(node)}; a container is closed by ::: alone`;
  const range = { start: outer.position?.start.offset ?? 0, end: page.source.text.length };
  return [{ at, message, suggestion: { at: span(page, at), text: ':::' }, covers: [range] }];
}

function unclosed(page: SyntaxPage, placed: PlacedNode): SyntaxFault {
  const at = openingOf(page, placed);
  const outer = placed.parents.findLast(({ type }) => type === 'containerDirective');
  if (outer && !isOpen(outer)) return nested(page, placed, outer);
  const swallowed = page.placed.find(
    ({ node, parents }) =>
      parents.includes(placed.node as Holder) &&
      (node.type === 'heading' || (node.type === 'leafDirective' && node.name === 'step')),
  );
  const notes = swallowed
    ? [{ message: 'so this stands inside it too', at: span(page, openingOf(page, swallowed)) }]
    : [];
  const weak = weakFences(page, { start: at.end, end: placed.at.end });
  const inner = page.placed.filter(
    ({ node, parents }) => isOpen(node) && parents.includes(placed.node as Holder),
  );
  const message = `this ${nameOf(placed.node)} is never closed; write ::: on a line of its own where it ends`;
  return {
    at,
    message,
    notes: [...weak.map((one) => closesNothing(page, one)), ...notes],
    covers: [...weak, ...inner.map((one) => openingOf(page, one))],
  };
}

/** An inner container whose fence closed the outer one: no container holds another, so the outer lacks its fence. */
function nested(page: SyntaxPage, { node, at }: PlacedNode, outer: Holder): SyntaxFault {
  const start = outer.position?.start.offset ?? 0;
  const end = outer.position?.end.offset ?? at.end;
  const inner = openingOf(page, { node, at, parents: [] });
  const left: Range | undefined = strayFences(page).find((fence) => fence.start >= end);
  const message = `this ${nameOf(outer)} is not closed where ${nameOf(node)} begins; write ::: on a line of its own before that`;
  const weak = weakFences(page, { start, end: inner.start });
  const notes = [
    ...weak.map((one) => closesNothing(page, one)),
    { message: `${nameOf(node)} begins here`, at: span(page, inner) },
  ];
  return {
    at: openingOf(page, { node: outer, at: { start, end }, parents: [] }),
    message,
    notes,
    covers: left ? [left, ...weak] : weak,
  };
}

/** Lines that were to close a container and do not, since they have two colons or are indented. */
function weakFences(page: SyntaxPage, { start, end }: Range): readonly Range[] {
  return strayFences(page).filter((fence) => fence.start >= start && fence.end <= end);
}

function closesNothing(page: SyntaxPage, fence: Range) {
  return { message: 'this line does not close it: three colons at the left edge do', at: span(page, fence) };
}
