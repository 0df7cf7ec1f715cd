import { whatWasDone } from '../../cut/shape/told.ts';
import type { CutDatum, CutTemplate } from '../../model/cut-template.ts';
import type { TradeWords } from '../../trade/words.ts';
import type { GuideContext } from '../frame/context.ts';
import { always, shownWhen } from '../frame/plans.ts';
import type { TemplateView } from './block-views.ts';
import { cutLength, templateCuts } from './template-cuts.ts';

/** A cut template as the page tells of it: panel, face and side, datums, its drawing and its files. */
export function templateView(template: CutTemplate, context: GuideContext): TemplateView {
  const { guide, shelf } = context;
  const panel = template.panel === null ? null : guide.items.get(template.panel.value);
  return {
    ...always,
    id: template.id,
    title: template.title,
    facts: [
      panel ? `For the ${panel.noun.singular}` : null,
      `Laid on the ${template.face}`,
      sideWords(template.side, guide.words),
      ...whatWasDone(template),
    ].filter((fact) => fact !== null),
    datums: template.datums.map((datum) => datumWords(datum, context)),
    cuts: templateCuts(template, context),
    ...shelf.template(template.id),
  };
}

/** "Lower edge of the cover: 40 mm (1-9/16 in) from zero, with front fog lamps". */
function datumWords({ label, position, when }: CutDatum, context: GuideContext): string {
  const place = position === 0 ? label : `${label}: ${cutLength(position)} from zero`;
  const { only } = shownWhen(context, when);
  return only === null ? place : `${place}, ${only}`;
}

function sideWords(side: CutTemplate['side'], words: TradeWords): string | null {
  switch (side) {
    case 'each':
      return `One for each side, the ${words.right} one mirrored`;
    case 'left':
    case 'right':
      return `For the ${words[side]} side`;
    case null:
      return null;
  }
}
