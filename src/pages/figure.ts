import type { Figure } from '../model/block.ts';
import type { Side } from '../model/item.ts';
import type { GuideContext } from './context.ts';
import { shownWhen } from './plans.ts';
import { isBlank, proseMarkup } from './prose.ts';
import type { FigureView } from './views.ts';

/** A picture with its caption, its lettered key, and the side that it shows. */
export function figureView(figure: Figure, context: GuideContext, stepSide: Side | null): FigureView {
  const place = { context, stepSide };
  return {
    ...shownWhen(context, figure.when),
    caption: isBlank(figure.caption) ? null : proseMarkup(figure.caption, place),
    alt: figure.alt?.value ?? '',
    picture: figure.path === null ? null : context.shelf.picture(figure.path, figure),
    marks: figure.marks.map((mark) => ({ letter: mark.letter, text: proseMarkup(mark.text, place) })),
    body: isBlank(figure.body) ? null : proseMarkup(figure.body, place),
    side: figure.shows ? `${figure.shows.value === 'left' ? 'Left' : 'Right'} side shown` : null,
  };
}
