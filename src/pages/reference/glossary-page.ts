import { driveGlyph } from '../../drawings/drive-glyph.ts';
import { fastenerProfile } from '../../drawings/fastener-profile.ts';
import type { Markup } from '../../html/markup.ts';
import { stringify } from '../../html/stringify.ts';
import type { FastenerType, Tool, Wear } from '../../model/item.ts';
import { type GlossaryTerm, glossary, isTermOf, standardWords } from '../../trade/glossary/glossary.ts';
import { frameOf, type PageContext } from '../frame/context.ts';
import { fastenerTypePath, toolPath } from '../frame/reference-paths.ts';
import type { LinkView } from '../frame/shared-views.ts';
import { shapeOfType } from '../overview/fastener-shape.ts';
import { signalBar } from '../steps/blocks.ts';
import type { GuideSummary } from './guide-summary.ts';
import type { GlossaryView, TermView } from './reference-views.ts';
import { usesOfFasteners, usesOfSignalWord, type WhereUsed } from './where-used.ts';

const groups: readonly (readonly [kind: GlossaryTerm['kind'], title: string])[] = [
  ['drive', 'Drives'],
  ['fastener', 'Kinds of fastener'],
  ['signal-word', 'Signal words'],
];

/** Every drive, kind of fastener and signal word: what it is, its standard, and where the shop meets it. */
export function glossaryPage(guides: readonly GuideSummary[], page: PageContext): GlossaryView {
  return {
    frame: frameOf(page, { title: 'Glossary', styles: [`${page.root}assets/reference.css`] }),
    groups: groups.map(([kind, title]) => ({
      title,
      terms: glossary.filter((term) => term.kind === kind).map((term) => termView(term, guides, page)),
    })),
  };
}

function termView(term: GlossaryTerm, guides: readonly GuideSummary[], page: PageContext): TermView {
  return {
    id: term.id,
    term: term.term,
    drawing: drawingOf(term),
    bar: term.kind === 'signal-word' ? signalBar(term.word, page) : null,
    meaning: term.meaning,
    synonyms: term.synonyms.join(', '),
    standard: standardWords(term),
    related: relatedLinks(term, page),
    ...usesOfTerm(term, guides, page),
  };
}

function drawingOf(term: GlossaryTerm): Markup | null {
  switch (term.kind) {
    case 'drive':
      return stringify([driveGlyph(term.example)]);
    case 'fastener':
      return stringify([fastenerProfile(term.shape)]);
    case 'signal-word':
      return null;
  }
}

function relatedLinks(term: GlossaryTerm, { shop, root }: PageContext): LinkView[] {
  const tools = [...shop.crib.values()].filter((item) => toolHas(item, term));
  const types = [...shop.fastenerTypes.values()].filter((type) => typeIs(type, term));
  return [
    ...types.map(({ id, noun }) => ({ text: noun.label, href: root + fastenerTypePath(id) })),
    ...tools.map(({ id, noun }) => ({ text: noun.label, href: root + toolPath(id) })),
  ];
}

function toolHas(item: Tool | Wear, term: GlossaryTerm): boolean {
  return item.kind === 'tool' && item.drive !== null && isTermOf(term, item.drive.value);
}

function typeIs(type: FastenerType, term: GlossaryTerm): boolean {
  if (term.kind === 'fastener') return shapeOfType(type) === term.shape;
  return type.drive !== null && isTermOf(term, type.drive.value);
}

function usesOfTerm(term: GlossaryTerm, guides: readonly GuideSummary[], page: PageContext): WhereUsed {
  if (term.kind === 'signal-word') return usesOfSignalWord(term.word, guides, page);
  return usesOfFasteners(({ terms }) => terms.includes(term.id), guides, page);
}
