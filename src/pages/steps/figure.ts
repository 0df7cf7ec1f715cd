import type { DrawingPoint } from '../../drawings/leader.ts';
import { marksOverlay } from '../../drawings/marks.ts';
import { type PictureSize, placeMarks } from '../../drawings/place-marks.ts';
import { stringify } from '../../html/stringify.ts';
import { capitalised } from '../../job/words/noun.ts';
import type { Figure, PictureBox } from '../../model/block.ts';
import type { Side } from '../../model/item.ts';
import type { GuideContext } from '../frame/context.ts';
import { shownWhen } from '../frame/plans.ts';
import { isBlank, proseMarkup } from '../frame/prose.ts';
import type { SizedPicture } from '../frame/shared-views.ts';
import type { FigureView, MarksView, UndoneView } from './block-views.ts';
import { orderOnFigure } from './tightening/orders-on-figures.ts';
import type { TighteningOrder } from './tightening/tightening.ts';

/**
 * A picture with its caption, its lettered marks and their key, and the side that it shows.
 *
 * @param undoes the step that it was drawn for, where the step at hand undoes that one
 * @param orders the orders of tightening of its step, of which it may show one
 */
export function figureView(
  figure: Figure,
  context: GuideContext,
  stepSide: Side | null,
  undoes: UndoneView['step'] | null = null,
  orders: readonly TighteningOrder[] = [],
): FigureView {
  const place = { context, stepSide };
  const { path } = figure;
  const turned = path === null || !undoes ? null : context.shelf.picture(path, figure, true);
  const picture = turned ?? (path === null ? null : context.shelf.picture(path, figure));
  const order = picture && orderOnFigure(figure, wholeSize(figure, picture), orders, context);
  return {
    ...shownWhen(context, figure.when),
    caption: isBlank(figure.caption) ? null : proseMarkup(figure.caption, place),
    alt: figure.alt?.value ?? '',
    picture,
    marks: picture && figure.marks.length > 0 ? marksView(figure, picture, order?.turns ?? []) : null,
    order: order && { of: order.item, title: order.title, lines: order.lines, aloud: order.aloud },
    key: figure.marks.map((mark) => ({
      letter: mark.letter,
      text: proseMarkup(mark.text, { ...place, fragment: true }),
    })),
    body: isBlank(figure.body) ? null : proseMarkup(figure.body, place),
    side: figure.shows ? `${capitalised(context.guide.words[figure.shows.value])} side shown` : null,
    undoes: undoes && { step: undoes, turned: turned !== null },
  };
}

function marksView(figure: Figure, picture: SizedPicture, turns: readonly DrawingPoint[]): MarksView {
  const shown = figure.crop?.value ?? null;
  const layout = placeMarks(figure.marks, wholeSize(figure, picture), shown);
  const detail = figure.zoom ? within(figure.zoom.value, shown) : null;
  return {
    overlay: stringify([marksOverlay(layout, detail, turns)]),
    sides: layout.sides.map((side) => `marked-${side}`).join(' '),
  };
}

/** Places are fractions of the uncropped picture; the one at hand may be cropped. */
function wholeSize({ crop }: Figure, picture: SizedPicture): PictureSize {
  return {
    width: picture.width / (crop?.value.width ?? 1),
    height: picture.height / (crop?.value.height ?? 1),
  };
}

/** A box of the whole picture as fractions of the part that is shown. */
function within(box: PictureBox, shown: PictureBox | null): PictureBox {
  if (!shown) return box;
  return {
    left: (box.left - shown.left) / shown.width,
    top: (box.top - shown.top) / shown.height,
    width: box.width / shown.width,
    height: box.height / shown.height,
  };
}
