import type { Markup } from '../../html/markup.ts';
import { capitalised, countWords, isFixing, itemTorqueWords } from '../../job/index.ts';
import { actionsOf } from '../../job/walk.ts';
import type { Block, Note } from '../../model/block.ts';
import type { Guide } from '../../model/guide.ts';
import type { GuideContext } from '../frame/context.ts';
import { shownWhen } from '../frame/plans.ts';
import { isBlank, proseMarkup } from '../frame/prose.ts';
import type { Shown } from '../frame/shared-views.ts';
import { limitRows } from '../overview/limits.ts';
import type { LimitRow } from '../overview/list-views.ts';
import type { ReadingView } from '../steps/block-views.ts';
import { readingsOf } from '../steps/readings.ts';

/** The sheet that the owner is given. */
export interface HandOverView {
  readonly words: readonly (Shown & { readonly title: Markup | null; readonly html: Markup })[];
  readonly limits: readonly LimitRow[];
  readonly readings: readonly ReadingView[];
  /** Fasteners from the box that were tightened to a torque and may be tightened again. */
  readonly rechecks: readonly (Shown & { readonly name: string; readonly torque: string })[];
}

/** What the guide says to the owner, what the job may carry, what was measured, and what to look at again. */
export function handOverView(guide: Guide, context: GuideContext): HandOverView {
  const blocks = blocksOf(guide);
  return {
    words: blocks.filter(isForOwner).map(({ when, title, body }) => {
      // The same words stand on the page already, with their anchors.
      const place = { context, stepSide: null, repeated: true };
      return {
        ...shownWhen(context, when),
        title: title && !isBlank(title) ? proseMarkup(title, place) : null,
        html: proseMarkup(body, place),
      };
    }),
    limits: limitRows(context),
    readings: readingsOf(blocks, context),
    rechecks: rechecksOf(guide, context),
  };
}

function blocksOf({ opening, sections }: Guide): readonly Block[] {
  return [
    ...opening,
    ...sections.flatMap(({ intro, steps }) => [...intro, ...steps.flatMap((step) => step.blocks)]),
  ];
}

function isForOwner(block: Block): block is Note {
  return block.type === 'owner';
}

/** A fastener that is used once holds by its coating: turning it again would break that. */
function rechecksOf(guide: Guide, context: GuideContext): HandOverView['rechecks'] {
  const tightened = new Set(
    [...context.steps.values()].flatMap(({ step }) =>
      actionsOf(step).flatMap(({ node }) => (node.verb === 'tighten' ? [node.target.value] : [])),
    ),
  );
  return [...guide.items.values()].flatMap((item) => {
    if (item.kind !== 'kit' || !isFixing(item) || !item.torque || !item.reuse) return [];
    if (!tightened.has(item.id)) return [];
    const name = item.count.value === 1 ? item.noun.singular : item.noun.plural;
    return [
      {
        ...shownWhen(context, item.when),
        name: `${capitalised(name)}, ${countWords(item)}`,
        torque: itemTorqueWords(item),
      },
    ];
  });
}
