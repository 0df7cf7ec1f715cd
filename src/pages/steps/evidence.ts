import { plainText } from '../../html/prose.ts';
import { actionsOf, mentionWords } from '../../job/index.ts';
import type { Photo } from '../../model/block.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Side } from '../../model/item.ts';
import type { Prose } from '../../model/prose.ts';
import type { GuideContext } from '../frame/context.ts';
import { shownWhen } from '../frame/plans.ts';
import { proseMarkup } from '../frame/prose.ts';
import type { PhotoView, ReadingView } from './block-views.ts';
import type { SettingView } from './step-views.ts';

/** Each side of a step that is done on each is evidence of its own. */
export function sidesOf(
  stepSide: Side | null,
  { guide: { words } }: Pick<GuideContext, 'guide'>,
): ReadingView['sides'] {
  if (stepSide !== 'each') return [{ side: '', name: '' }];
  return (['left', 'right'] as const).map((side) => ({ side, name: words[side] }));
}

/**
 * A photograph that a step or a section asks for.
 *
 * @param number counts from 1 within its step or section
 */
export function photoView(
  photo: Photo,
  number: number,
  context: GuideContext,
  stepSide: Side | null,
): PhotoView {
  return {
    ...shownWhen(context, photo.when),
    number,
    shows: proseMarkup(photo.shows, { context, stepSide }),
    sides: sidesOf(stepSide, context),
  };
}

/** What a photograph must show, as plain words. */
export function photoWords({ shows }: Photo, guide: Pick<Guide, 'items'>): string {
  const words = (prose: Prose): string =>
    plainText(prose, (inline) => {
      if (inline.type === 'where') return words(inline.children);
      const noun = inline.type === 'mention' ? guide.items.get(inline.target.value)?.noun : undefined;
      return inline.type === 'mention' && noun ? mentionWords(inline, noun, false) : '';
    });
  return words(shows);
}

/** The settings that a step sets, or sets back, in the order of doing. */
export function settingsOf(step: Step, context: GuideContext): readonly SettingView[] {
  return actionsOf(step).flatMap(({ node, whens }) => {
    const item = context.guide.items.get(node.target.value);
    if (item?.kind !== 'setting') return [];
    const narrowest = whens.at(-1);
    const [from, to] = node.verb === 'clear' ? [item.to, item.from] : [item.from, item.to];
    return {
      ...shownWhen(context, narrowest ? { value: narrowest } : item.when),
      id: item.id,
      name: item.noun.label,
      from: from.value,
      to: to.value,
    };
  });
}
