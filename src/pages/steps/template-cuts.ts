import { marksOf } from '../../cut/shape/marks.ts';
import { findTarget, targetNoun } from '../../job/index.ts';
import type { Feature } from '../../job/target.ts';
import type { CutOutline, CutTemplate } from '../../model/cut-template.ts';
import { formatBoth, quantityOf } from '../../units/format.ts';
import type { GuideContext } from '../frame/context.ts';
import { itemAnchor } from '../frame/mention.ts';
import { shownWhen } from '../frame/plans.ts';
import type { TemplateCut } from './block-views.ts';

/** What a template cuts, in the order of the letters on its drawing. */
export function templateCuts(template: CutTemplate, context: GuideContext): readonly TemplateCut[] {
  const { outlines, slots, holes, patterns } = template;
  const marks = marksOf(template);
  return [...outlines, ...slots, ...holes, ...patterns].map((cut, index): TemplateCut => {
    const shown = { ...shownWhen(context, cut.when), marks: spanOf(marks[index]?.marks ?? []) };
    if (isOutline(cut)) return { ...shown, id: null, name: template.title, size: '', for: null };
    const target = cut.for && findTarget(context.guide, cut.for.value);
    return {
      ...shown,
      id: cut.id === null ? null : itemAnchor(cut.id),
      name: cut.label,
      size: sizeOf(cut),
      for: target ? targetNoun(target).singular : null,
    };
  });
}

function isOutline(cut: CutOutline | Feature): cut is CutOutline {
  return 'kind' in cut;
}

/** "B"; "C–F" for a row of holes. */
function spanOf(marks: readonly string[]): string {
  const [first = '', last = first] = [marks[0], marks.at(-1)];
  return first === last ? first : `${first}–${last}`;
}

/** "Ø 9 mm (23/64 in)", "6 × Ø 5 mm (13/64 in)", "12 mm (15/32 in) wide, 40 mm (1-37/64 in) between its ends' centres". */
function sizeOf(feature: Feature): string {
  const length = (millimetres: number) => formatBoth(quantityOf('length', millimetres, 'mm'));
  if ('width' in feature) {
    const { from, to, width } = feature;
    const apart = Math.hypot(to.x - from.x, to.y - from.y);
    return `${length(width)} wide, ${length(apart)} between the centres of its ends`;
  }
  const count = 'count' in feature ? `${feature.count} × ` : '';
  return `${count}Ø ${length(feature.diameter)}`;
}
