import type { CutTemplate } from '../model/cut-template.ts';
import { formatBoth, quantityOf } from '../units/format.ts';
import type { TemplateView } from './block-views.ts';
import type { GuideContext } from './context.ts';
import { always } from './plans.ts';

/** A cut template as the page tells of it: panel, face and side, datums, its drawing and its files. */
export function templateView(template: CutTemplate, { guide, shelf }: GuideContext): TemplateView {
  const panel = template.panel === null ? null : guide.items.get(template.panel.value);
  return {
    ...always,
    id: template.id,
    title: template.title,
    facts: [
      panel ? `For the ${panel.noun.singular}` : null,
      `Laid on the ${template.face}`,
      sideWords(template.side),
    ].filter((fact) => fact !== null),
    datums: template.datums.map(({ label, position }) =>
      position === 0 ? label : `${label}: ${formatBoth(quantityOf('length', position, 'mm'))} from zero`,
    ),
    ...shelf.template(template.id),
  };
}

function sideWords(side: CutTemplate['side']): string | null {
  switch (side) {
    case 'each':
      return 'One for each side, the right one mirrored';
    case 'left':
    case 'right':
      return `For the ${side} side`;
    case null:
      return null;
  }
}
