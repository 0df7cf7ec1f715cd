import { marksOverlay } from '../../drawings/marks.ts';
import { placeMarks } from '../../drawings/place-marks.ts';
import { stringify } from '../../html/stringify.ts';
import { capitalised } from '../../job/noun.ts';
import type { Figure, PictureBox } from '../../model/block.ts';
import type { Side } from '../../model/item.ts';
import type { GuideContext } from '../frame/context.ts';
import { shownWhen } from '../frame/plans.ts';
import { isBlank, proseMarkup } from '../frame/prose.ts';
import type { SizedPicture } from '../frame/shared-views.ts';
import type { FigureView, MarksView, UndoneView } from './block-views.ts';

/**
 * A picture with its caption, its lettered marks and their key, and the side that it shows.
 *
 * @param undoes the step that it was drawn for, where the step at hand undoes that one
 */
export function figureView(
  figure: Figure,
  context: GuideContext,
  stepSide: Side | null,
  undoes: UndoneView['step'] | null = null,
): FigureView {
  const place = { context, stepSide };
  const { path } = figure;
  const turned = path === null || !undoes ? null : context.shelf.picture(path, figure, true);
  const picture = turned ?? (path === null ? null : context.shelf.picture(path, figure));
  return {
    ...shownWhen(context, figure.when),
    caption: isBlank(figure.caption) ? null : proseMarkup(figure.caption, place),
    alt: figure.alt?.value ?? '',
    picture,
    marks: picture && figure.marks.length > 0 ? marksView(figure, picture) : null,
    key: figure.marks.map((mark) => ({
      letter: mark.letter,
      text: proseMarkup(mark.text, { ...place, fragment: true }),
    })),
    body: isBlank(figure.body) ? null : proseMarkup(figure.body, place),
    side: figure.shows ? `${capitalised(context.guide.words[figure.shows.value])} side shown` : null,
    undoes: undoes && { step: undoes, turned: turned !== null },
  };
}

function marksView({ marks, crop, zoom }: Figure, picture: SizedPicture): MarksView {
  const shown = crop?.value ?? null;
  // Places are fractions of the uncropped picture; the one at hand may be cropped.
  const whole = {
    width: picture.width / (shown?.width ?? 1),
    height: picture.height / (shown?.height ?? 1),
  };
  const layout = placeMarks(marks, whole, shown);
  return {
    overlay: stringify([marksOverlay(layout, zoom ? within(zoom.value, shown) : null)]),
    sides: layout.sides.map((side) => `marked-${side}`).join(' '),
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
