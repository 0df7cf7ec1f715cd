import { actionsOf, inlinesOf } from '../../job/actions/walk.ts';
import type { Figure } from '../../model/block.ts';
import type { Step } from '../../model/guide.ts';
import type { GuideContext } from '../frame/context.ts';
import type { BlockView } from './block-views.ts';
import { figureView } from './figure.ts';
import type { TighteningOrder } from './tightening/tightening.ts';

/**
 * The pictures of the step that a derived one undoes, which it shows as its own: with the way back where the drawing
 * says it, else as taken off. A picture that marks items, and none that this step handles, is left where it was.
 */
export function undoneFigures(
  step: Step,
  context: GuideContext,
  orders: readonly TighteningOrder[] = [],
): readonly BlockView[] {
  const origin = step.origins.findLast(({ kind }) => kind === 'reverse');
  if (origin?.kind !== 'reverse') return [];
  const numbered = context.steps.get(origin.step);
  if (!numbered) return [];
  const { step: source, number } = numbered;
  const undone = { id: source.id, number, title: source.titleText, href: `${context.places}#${source.id}` };
  const handled = new Set(actionsOf(step).map(({ node }) => node.target.value));
  return source.blocks.flatMap((block): BlockView[] => {
    if (block.type !== 'figure' || !showsAny(block, handled)) return [];
    const view = figureView(block, context, step.side?.value ?? null, undone, orders);
    return [{ type: 'figure', ...view, changed: false }];
  });
}

function showsAny({ marks }: Figure, handled: ReadonlySet<string>): boolean {
  const named = marks.flatMap(({ text }) => inlinesOf(text).map(({ node }) => node.target.value));
  return named.length === 0 || named.some((id) => handled.has(id));
}
