import type { SyntaxRule } from './rule.ts';
import { lineFrom, span } from './rule.ts';

const read = '---\ntitle: Example van\n---\n\nA van.\n';

/** Front matter that Markdown takes for ordinary text, since it begins too late or never ends. */
export const frontMatterUnread: SyntaxRule = {
  card: {
    code: 'front-matter-unread',
    severity: 'error',
    title: 'Front matter that is not read',
    why: 'Front matter begins on the first line of the file with `---` and ends with another line `---`. Written otherwise it turns into a rule and a heading, and the guide loses its title, platform and options.',
    bad: { 'platforms/example-van.md': `\n${read}` },
    good: { 'platforms/example-van.md': read },
  },
  stops: true,
  find: ({ source, root, ...page }) => {
    const opening = /^(\s*)(-{2,})[ \t]*(?:\r\n|\n|\r)[\w-]+:(?:\s|$)/.exec(source.text);
    if (!opening || root.children[0]?.type === 'yaml') return [];
    const before = opening[1]?.length ?? 0;
    const whole = { source, root, ...page };
    const at = lineFrom(whole, before);
    const closing = /(?:\r\n|\n|\r)---[ \t]*(?=[\r\n]|$)/.exec(source.text.slice(at.end));
    const paragraph = source.text.slice(at.end).search(/(?:\r\n|\n|\r)[ \t]*(?:\r\n|\n|\r)/);
    const end = closing
      ? at.end + closing.index + closing[0].length
      : paragraph < 0
        ? source.text.length
        : at.end + paragraph;
    const hyphens = opening[2] ?? '';
    if (hyphens !== '---') {
      const fence = { start: before, end: before + hyphens.length };
      const suggestion = { at: span(whole, fence), text: '---' };
      const message = 'front matter begins with three hyphens, no more and no less';
      return [{ at: fence, message, suggestion, covers: [{ start: before, end }] }];
    }
    if (!closing)
      return [
        {
          at,
          message: 'this front matter is never closed; write --- on a line of its own after its last key',
          covers: [{ start: before, end }],
        },
      ];
    const suggestion = { at: span(whole, { start: 0, end: before }), text: '' };
    const message = 'front matter begins on the first line of the file; take away what stands before it';
    return [{ at: { start: 0, end: before }, message, suggestion, covers: [{ start: before, end }] }];
  },
};
