import { marksOf } from '../../cut/shape/marks.ts';
import { resolve } from '../../cut/shape/resolve.ts';
import { mm, type ResolvedCut } from '../../cut/shape/resolved.ts';
import { contourBounds } from '../../geometry/contour.ts';
import { distanceBetween } from '../../geometry/point.ts';
import type { Feature } from '../../job/actions/target.ts';
import { findTarget, targetNoun } from '../../job/index.ts';
import type { CutOutline, CutTemplate } from '../../model/cut-template.ts';
import { formatBoth, quantityOf } from '../../units/format.ts';
import type { GuideContext } from '../frame/context.ts';
import { itemAnchor } from '../frame/mention.ts';
import { shownWhen } from '../frame/plans.ts';
import type { TemplateCut } from './block-views.ts';

/**
 * What a template cuts, in the order of the letters on its drawing, with sizes of the line to cut: a set-back and a
 * curve that is laid flat are in them, as on the sheets.
 */
export function templateCuts(template: CutTemplate, context: GuideContext): readonly TemplateCut[] {
  const { outlines, slots, holes, patterns } = template;
  const marks = marksOf(template);
  const cuts = new Map(resolve(template).resolved.cuts.map((cut) => [cut.mark, cut]));
  return [...outlines, ...slots, ...holes, ...patterns].map((cut, index): TemplateCut => {
    const letters = marks[index]?.marks ?? [];
    const shown = { ...shownWhen(context, cut.when), marks: spanOf(letters) };
    const toCut = cuts.get(letters[0] ?? '');
    if (isOutline(cut)) {
      return { ...shown, id: null, name: template.title, size: toCut ? overall(toCut) : '', for: null };
    }
    const target = cut.for && findTarget(context.guide, cut.for.value);
    return {
      ...shown,
      id: cut.id === null ? null : itemAnchor(cut.id),
      name: cut.label,
      size: toCut ? sizeOf(toCut, letters.length) : '',
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

/** A length of a template in both systems, to the hundredth of a millimetre that the sheets print. */
export function cutLength(millimetres: number): string {
  return formatBoth({ ...quantityOf('length', millimetres, 'mm'), written: mm(millimetres) });
}

/** "401 mm (15-25/32 in) × 401 mm (15-25/32 in) overall". */
function overall({ area }: ResolvedCut): string {
  const { minX, minY, maxX, maxY } = contourBounds(area);
  return `${cutLength(maxX - minX)} × ${cutLength(maxY - minY)} overall`;
}

/** "Ø 9 mm (23/64 in)", "6 × Ø 5 mm (13/64 in)", "12 mm (15/32 in) wide, 40 mm (1-37/64 in) between its ends' centres". */
function sizeOf({ kind, diameter, stations: [from, to] }: ResolvedCut, count: number): string {
  const width = cutLength(diameter ?? 0);
  if (kind === 'slot' && from && to) {
    const apart = distanceBetween(from.point, to.point);
    return `${width} wide, ${cutLength(apart)} between the centres of its ends`;
  }
  return `${count > 1 ? `${count} × ` : ''}Ø ${width}`;
}
