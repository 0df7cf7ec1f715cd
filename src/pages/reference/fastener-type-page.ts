import { fastenerProfile } from '../../drawings/fastener-profile.ts';
import { stringify } from '../../html/stringify.ts';
import type { FastenerType } from '../../model/item.ts';
import { type FastenerShape, glossary } from '../../trade/glossary/glossary.ts';
import { frameOf, type PageContext } from '../frame/context.ts';
import { termPath } from '../frame/reference-paths.ts';
import { shapeOfType } from '../overview/fastener-shape.ts';
import type { GuideSummary } from './guide-summary.ts';
import { driveFact, fact, ownPictureView, synonymFacts } from './reference-facts.ts';
import type { FactView, ReferenceView } from './reference-views.ts';
import { usesOfFasteners } from './where-used.ts';

/**
 * A kind of fastener that the shop knows: what it looks like, its drive, how it lets go, and where it is used. Its drive
 * is no picture of it: that stands among the facts.
 */
export function fastenerTypePage(
  type: FastenerType,
  guides: readonly GuideSummary[],
  page: PageContext,
): ReferenceView {
  const shape = shapeOfType(type);
  const picture = ownPictureView(`fastener ${type.id}`, page);
  return {
    frame: frameOf(page, { title: type.noun.label, styles: [`${page.root}assets/reference.css`] }),
    kicker: 'Fastener',
    title: type.noun.label,
    picture,
    drawing: shape && !picture ? stringify([fastenerProfile(shape)]) : null,
    lead: type.release,
    facts: [
      ...shapeFact(shape, page),
      ...(type.drive ? [driveFact(type.drive.value, page)] : []),
      ...(type.standard ? [fact('Width across flats', `after ${type.standard.value}`)] : []),
      fact('Goes back', type.reuse ? 'yes, if it is whole' : 'no: used once, fit a new one'),
      ...synonymFacts(type),
    ],
    ...usesOfFasteners((fastener) => fastener.type === type.id, guides, page),
  };
}

function shapeFact(shape: FastenerShape | null, { root }: PageContext): readonly FactView[] {
  const term = glossary.find((entry) => entry.kind === 'fastener' && entry.shape === shape);
  return term ? [fact('Kind', term.term, root + termPath(term))] : [];
}
