import { fastenerProfile, profileFor } from '../drawings/fastener-profile.ts';
import { stringify } from '../html/stringify.ts';
import type { FastenerType } from '../model/item.ts';
import { glossary } from '../trade/glossary.ts';
import { frameOf, type PageContext } from './context.ts';
import type { PublishedGuide } from './index-page.ts';
import { driveFact, fact, synonymFacts } from './reference-facts.ts';
import { termPath } from './reference-paths.ts';
import type { FactView, ReferenceView } from './reference-views.ts';
import { usesOfFasteners } from './where-used.ts';

/** A kind of fastener that the shop knows: its shape, its drive, how it lets go, and where it is used. */
export function fastenerTypePage(
  type: FastenerType,
  guides: readonly PublishedGuide[],
  page: PageContext,
): ReferenceView {
  const shape = profileFor(type.noun.label, type.drive?.value ?? null);
  return {
    frame: frameOf(page, { title: type.noun.label, styles: [`${page.root}assets/reference.css`] }),
    kicker: 'Fastener',
    title: type.noun.label,
    drawing: shape ? stringify([fastenerProfile(shape)]) : null,
    lead: type.release,
    facts: [
      ...shapeFact(shape, page),
      ...(type.drive ? [driveFact(type.drive.value, page)] : []),
      fact('Goes back', type.reuse ? 'yes, if it is whole' : 'no: used once, fit a new one'),
      ...synonymFacts(type),
    ],
    uses: usesOfFasteners((item) => item.kind === 'fastener' && item.type?.value === type.id, guides, page),
  };
}

function shapeFact(shape: ReturnType<typeof profileFor>, { root }: PageContext): readonly FactView[] {
  const term = glossary.find((entry) => entry.kind === 'fastener' && entry.shape === shape);
  return term ? [fact('Kind', term.term, root + termPath(term))] : [];
}
