import { finding, type RuleCard } from '../diagnostics/rule-card.ts';
import { didYouMean, nearest } from '../diagnostics/suggest.ts';
import { anchorsOf, linkTarget } from './links.ts';
import type { PageRule } from './rule.ts';

const card: RuleCard = {
  code: 'anchor-missing',
  severity: 'error',
  title: 'A link to a place that the page does not have',
  why: 'The link opens the page at its top, and the reader is left to search. Ids stand behind headings and on steps: ## Fit {#fit}.',
  bad: '## Fit {#fit}\n\nNothing yet.\n\n## Prove it {#prove}\n\nAs under [fitting](#fitt).',
  good: '## Fit {#fit}\n\nNothing yet.\n\n## Prove it {#prove}\n\nAs under [fitting](#fit).',
};

/** Every link with a `#` names a section, a step or a template of the page that it leads to. */
export const anchorMissing: PageRule = {
  card,
  runOnPage: (page, shop, report, lost) => {
    for (const link of page.links) {
      const target = linkTarget(page, link.href);
      if (target.kind !== 'file' || target.path === null || target.anchor === null) continue;
      // Footnotes and the way back from them are made together, by the reader of the text.
      if (target.anchor.startsWith('footnote-')) continue;
      // A missing file is told by another rule; a file that is no page has no anchors to check.
      const anchors = anchorsOf(shop, target.path);
      if (anchors === null || anchors.has(target.anchor)) continue;
      if (target.path === page.file && (lost.nameless.has('place') || lost.ids.has(target.anchor))) continue;
      const help = didYouMean(nearest(target.anchor, anchors).map((id) => `#${id}`));
      const where = target.path === page.file ? 'this page' : target.path;
      report(
        finding(card, link.at, `${where} has no place "#${target.anchor}"`, {
          notes: help === '' ? [] : [{ message: help }],
        }),
      );
    }
  },
};
