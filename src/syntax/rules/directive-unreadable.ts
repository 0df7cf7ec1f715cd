import type { Range } from '../directive-places.ts';
import { type Cause, explainBroken } from '../explain-broken.ts';
import type { PlacedNode, SyntaxFault, SyntaxPage, SyntaxRule } from './rule.ts';

/** A line that begins as a directive does and is read as ordinary text. */
export const directiveUnreadable: SyntaxRule = {
  card: {
    code: 'directive-unreadable',
    severity: 'error',
    title: 'A directive that is read as ordinary text',
    why: 'A line that begins with two colons is meant as a directive. Where something in it does not fit, Markdown prints the line as text, and the step, the tool or the warning is gone.',
    bad: ':: step[Free the arch edge]{#arch}\n\nLook behind the edge.',
    good: '::step[Free the arch edge]{#arch}\n\nLook behind the edge.',
  },
  stops: true,
  find: (page) => {
    const indented = indentedLines(page);
    const lines = colonLines(page);
    const strays = lines.map(({ line }) => line).filter((line) => isFence(page, line));
    return [
      ...indented.map((at) => ({
        at,
        message: 'this line is indented, so it is read as code; begin it at the left edge',
      })),
      ...lines.flatMap(({ line, block }) => (isFence(page, line) ? [] : [fault(page, line, block, strays)])),
    ];
  },
};

/** The first line of each block that four spaces or a tab make code, where it is written as a directive that exists. */
function indentedLines(page: SyntaxPage): Range[] {
  return page.placed.flatMap(({ node, at }) => {
    const [line = ''] = page.source.text
      .slice(at.start, at.end)
      .trimStart()
      .split(/[\r\n]/);
    const name = /^:{2,3}([\w-]+)/.exec(line)?.[1] ?? '';
    if (node.type !== 'code' || !(page.names.leaf.has(name) || page.names.container.has(name))) return [];
    const start = page.source.text.indexOf(line, at.start);
    return [{ start, end: start + line.length }];
  });
}

/** A line of colons alone that closes nothing. */
export const fenceStray: SyntaxRule = {
  card: {
    code: 'fence-stray',
    severity: 'error',
    title: 'A line of colons that closes nothing',
    why: 'Three colons alone close the container that stands open. With none open, something was closed too early, or its opening is not read.',
    bad: '::step[Free the arch edge]{#arch}\n\nLook behind the edge.\n\n:::',
    good: '::step[Free the arch edge]{#arch}\n\nLook behind the edge.',
  },
  stops: true,
  find: (page) =>
    strayFences(page).map((at) => ({ at, message: 'these colons close nothing; no container is open here' })),
};

/** The lines of colons alone that stand as text. */
export function strayFences(page: SyntaxPage): Range[] {
  return colonLines(page)
    .map(({ line }) => line)
    .filter((line) => isFence(page, line));
}

function fault(page: SyntaxPage, line: Range, block: PlacedNode, strays: readonly Range[]): SyntaxFault {
  const text = page.source.text.slice(line.start, line.end);
  const cause = withinSentence(page, text) ?? explainBroken(text);
  const at = { start: line.start + cause.start, end: line.start + cause.end };
  const covers = [{ start: line.start, end: cause.runsOn ? block.at.end : line.end }];
  if (block.node.type === 'html') covers.push({ start: block.at.start, end: block.at.start + 1 });
  // The fence that was to close a broken container has nothing to close either.
  const fence = text.startsWith(':::') ? strays.find(({ start }) => start >= line.end) : undefined;
  if (fence) covers.push(fence);
  return { at, message: `this directive is read as text: ${cause.message}`, covers };
}

/** `::remove[clip] and …`: what stands in a sentence, written as a line of its own. */
function withinSentence(page: SyntaxPage, line: string): Cause | null {
  const [whole, name = ''] = /^::([\w-]+)\[[^\]]*\](?:\{[^}]*\})?(?= *[^ [{])/.exec(line) ?? [];
  if (whole === undefined || !page.names.text.has(name) || page.names.leaf.has(name)) return null;
  return { message: `within a sentence, :${name}[…] has one colon`, start: 0, end: name.length + 2 };
}

function isFence(page: SyntaxPage, line: Range): boolean {
  return /^:+\s*$/.test(page.source.text.slice(line.start, line.end));
}

/** Lines of text blocks that begin with two colons, each with its block. */
function colonLines(page: SyntaxPage): { readonly line: Range; readonly block: PlacedNode }[] {
  return page.placed.flatMap((block) => {
    const { node, at, parents } = block;
    if (node.type !== 'paragraph' && node.type !== 'html' && node.type !== 'heading') return [];
    if (node.type === 'html' && (parents.at(-1)?.type === 'paragraph' || node.value.startsWith('<!--')))
      return [];
    if (node.data && 'directiveLabel' in node.data) return [];
    return linesOf(page.source.text, at).map((line) => ({ line, block }));
  });
}

function linesOf(text: string, { start, end }: Range): Range[] {
  const found: Range[] = [];
  for (const line of text.slice(start, end).matchAll(/(?:^|[\r\n])[ \t]*(?:>[ \t]*)*(::[^\r\n]*)/g)) {
    const from = start + line.index + line[0].length - (line[1]?.length ?? 0);
    found.push({ start: from, end: from + (line[1]?.length ?? 0) });
  }
  return found;
}
