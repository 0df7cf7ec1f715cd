import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { didYouMean, nearest } from '../../diagnostics/suggest.ts';
import type { Span } from '../../source/span.ts';
import type { BetweenRule, PageRule } from '../rule.ts';
import { anchorsOfPlatform, linkTarget } from './links.ts';

const card: RuleCard = {
  code: 'anchor-missing',
  severity: 'error',
  title: 'A link to a place that the page does not have',
  why: 'The link opens the page at its top, and the reader is left to search. Ids stand behind headings and on steps: ## Fit {#fit}.',
  bad: '## Fit {#fit}\n\nNothing yet.\n\n## Prove it {#prove}\n\nAs under [fitting](#fitt).',
  good: '## Fit {#fit}\n\nNothing yet.\n\n## Prove it {#prove}\n\nAs under [fitting](#fit).',
};

/** Every link with a `#` names a section, a step or a template of its own page or a section of a platform. */
export const anchorMissing: PageRule = {
  card,
  runOnPage: (page, shop, report, lost) => {
    for (const link of page.links) {
      const target = linkTarget(page, link.href);
      if (target.kind !== 'file' || target.path === null || target.anchor === null) continue;
      // Footnotes and the way back from them are made together, by the reader of the text.
      if (target.anchor.startsWith('footnote-')) continue;
      const own = target.path === page.file;
      // A missing file is told by another rule; a file that is no page has no anchors to check.
      const anchors = own ? page.anchors : anchorsOfPlatform(shop, target.path);
      if (anchors === null || anchors.has(target.anchor)) continue;
      if (own && (lost.nameless.has('place') || lost.ids.has(target.anchor))) continue;
      report(missing(link.at, target.anchor, own ? 'this page' : target.path, anchors));
    }
  },
};

/** Every link with a `#` to another guide names a section, a step or a template of it. */
export const anchorMissingElsewhere: BetweenRule = {
  card,
  runBetween: (guides, report) => {
    const byFile = new Map(guides.map((guide) => [guide.file, guide]));
    for (const { path, anchor, at } of guides.flatMap(({ links }) => links)) {
      const anchors = byFile.get(path)?.anchors;
      if (anchors && !anchors.includes(anchor)) report(missing(at, anchor, path, anchors));
    }
  },
};

function missing(at: Span, anchor: string, where: string, anchors: Iterable<string>) {
  const help = didYouMean(nearest(anchor, anchors).map((id) => `#${id}`));
  const notes = help === '' ? [] : [{ message: help }];
  return finding(card, at, `${where} has no place "#${anchor}"`, { notes });
}
