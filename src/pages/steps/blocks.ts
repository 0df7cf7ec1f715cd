import type { Block, Photo, SafetyMessage } from '../../model/block.ts';
import type { Side } from '../../model/item.ts';
import type { SignalWord } from '../../trade/signal-words.ts';
import { signalPanel } from '../../trade/signal-words.ts';
import type { GuideContext } from '../frame/context.ts';
import { always, shownWhen } from '../frame/plans.ts';
import { isBlank, proseMarkup } from '../frame/prose.ts';
import type { BlockKindView, BlockView, MessageView, SignalBar } from './block-views.ts';
import { photoView } from './evidence.ts';
import { figureView } from './figure.ts';
import { readingsOf } from './readings.ts';
import { templateView } from './template.ts';
import type { TighteningOrder } from './tightening/tightening.ts';

/**
 * The blocks of a section or step as the page prints them; what is said only on reversal is left out.
 *
 * @param orders the orders of tightening that its figures may show
 * @param of whose blocks they are, as the marks of what has changed have it: `step hang`; `null` where none are marked
 */
export function blockViews(
  blocks: readonly Block[],
  context: GuideContext,
  stepSide: Side | null,
  of: string | null = null,
  orders: readonly TighteningOrder[] = [],
): readonly BlockView[] {
  let photos = 0;
  return blocks
    .filter(({ type }) => type !== 'refit-note')
    .flatMap((block, place): readonly BlockView[] => {
      const changed = context.marks.lines.has(`${of} ${place}`);
      if (block.type === 'photo') {
        photos += 1;
        return [{ type: 'photo', ...photoView(block, photos, context, stepSide), changed }];
      }
      const view = blockView(block, context, stepSide, orders);
      return view ? [{ ...view, changed }] : [];
    });
}

function blockView(
  block: Exclude<Block, Photo>,
  context: GuideContext,
  stepSide: Side | null,
  orders: readonly TighteningOrder[],
): BlockKindView | null {
  const place = { context, stepSide };
  switch (block.type) {
    case 'prose':
      return { type: 'prose', ...always, html: proseMarkup(block.content, place) };
    case 'message':
      return { type: 'message', ...messageView(block, context, stepSide) };
    case 'note':
    case 'why':
    case 'owner':
      return {
        type: block.type,
        ...shownWhen(context, block.when),
        title: block.title && !isBlank(block.title) ? proseMarkup(block.title, place) : null,
        html: proseMarkup(block.body, place),
      };
    case 'refit-note':
      return null;
    case 'figure':
      return { type: 'figure', ...figureView(block, context, stepSide, null, orders) };
    case 'template':
      return templateBlock(block.template.value, context, shownWhen(context, block.when));
    case 'prove':
      return {
        type: 'prove',
        ...shownWhen(context, block.when),
        title: proseMarkup(block.title, place),
        html: proseMarkup(block.body, place),
        readings: readingsOf([block], context, stepSide),
      };
  }
}

function templateBlock(id: string, context: GuideContext, shown: typeof always): BlockKindView | null {
  const template = context.guide.templates.get(id);
  return template ? { type: 'template', ...templateView(template, context), ...shown } : null;
}

/** A safety message after ANSI Z535.6: the word in a bar, with the alert symbol unless it is NOTICE. */
function messageView(message: SafetyMessage, context: GuideContext, stepSide: Side | null): MessageView {
  const place = { context, stepSide };
  return {
    ...shownWhen(context, message.when),
    ...signalBar(message.word, context),
    hazard: proseMarkup(message.hazard, place),
    body: proseMarkup(message.body, place),
  };
}

/** The bar of a signal word; the safety alert symbol never stands on NOTICE (ANSI Z535.6). */
export function signalBar(word: SignalWord, { shop }: Pick<GuideContext, 'shop'>): SignalBar {
  const panel = signalPanel(word, shop.settings.signalWords);
  return { word, label: panel.word, alert: panel.alert };
}
