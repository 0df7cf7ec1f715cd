import { posix } from 'node:path';
import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { nearest } from '../../diagnostics/suggest.ts';
import type { LinkFact } from '../../model/guide.ts';
import type { Shop } from '../../model/shop.ts';
import type { Page, PageRule } from '../rule.ts';
import { linkTarget } from './links.ts';

const card: RuleCard = {
  code: 'link-missing',
  severity: 'error',
  title: 'A link that leads nowhere',
  why: 'A link to a file that is not there fails in the bay, where nobody can ask. A guide links to the Markdown file of another page, and the site puts its page in the place of it.',
  bad: 'See [the notes](notes.md) first.',
  good: { 'example/guide.md': 'See [the van](../platforms/example-van.md) first.\n' },
};

/** Every link leads to a file of the workspace or to an address that a page can link to. */
export const linkMissing: PageRule = {
  card,
  runOnPage: (page, shop, report) => {
    for (const link of page.links) {
      const target = linkTarget(page, link.href);
      if (target.kind === 'unusable') {
        const message = `"${link.href}" is no link that works from a stick and from a server; use a path from this file`;
        report(finding(card, link.at, message));
      } else if (target.kind === 'file' && (target.path === null || !shop.files.has(target.path))) {
        report(missing(page, shop, link, target.path));
      }
    }
  },
};

function missing(page: Page, shop: Shop, link: LinkFact, path: string | null) {
  if (path === null) return finding(card, link.at, `"${link.href}" leads out of the workspace`);
  if (link.href.startsWith('www.'))
    return finding(card, link.at, `an address on the web begins with https://, as in https://${link.href}`);
  const pages = [...shop.files.keys()].filter((file) => file.endsWith('.md') && file !== page.file);
  const inFolder = pages.filter((file) => posix.dirname(file) === path.replace(/\/$/, ''));
  const near = inFolder[0] ?? nearest(path, pages)[0];
  const help =
    near === undefined
      ? []
      : [{ message: `did you mean ${posix.relative(posix.dirname(page.file), near)}?` }];
  return finding(card, link.at, `"${link.href}" leads to no file; looked for ${path}`, { notes: help });
}
