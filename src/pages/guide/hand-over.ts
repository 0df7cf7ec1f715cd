import type { Markup } from '../../html/markup.ts';
import { capitalised, countWords, handledCount, itemTorqueWords } from '../../job/index.ts';
import type { Block, NoteBlock } from '../../model/block.ts';
import type { Guide } from '../../model/guide.ts';
import { recheckWords } from '../../units/recheck.ts';
import type { GuideContext } from '../frame/context.ts';
import { shownWhen } from '../frame/plans.ts';
import { isBlank, proseMarkup } from '../frame/prose.ts';
import type { Shown } from '../frame/shared-views.ts';
import { limitRows } from '../overview/limits.ts';
import type { LimitRow } from '../overview/list-views.ts';
import type { ReadingView } from '../steps/block-views.ts';
import { expectedWords, readingsOf } from '../steps/readings.ts';

/** The sheet that the owner is given. */
export interface HandOverView {
  readonly words: readonly (Shown & { readonly title: Markup | null; readonly html: Markup })[];
  readonly limits: readonly LimitRow[];
  readonly readings: readonly ReadingView[];
  /** What is looked at again, and when; nothing else. */
  readonly rechecks: readonly (Shown & {
    readonly name: string;
    /** The torque, or what a reading should be. */
    readonly detail: string;
    readonly when: string;
  })[];
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
    rechecks: rechecksOf(guide, context).map(({ terms: _, ...row }) => row),
  };
}

function blocksOf({ opening, sections }: Guide): readonly Block[] {
  return [
    ...opening,
    ...sections.flatMap(({ intro, steps }) => [...intro, ...steps.flatMap((step) => step.blocks)]),
  ];
}

function isForOwner(block: Block): block is NoteBlock {
  return block.type === 'owner';
}

type RecheckRow = HandOverView['rechecks'][number] & {
  /** As an author writes it: `500 km or 3 months`. */
  readonly terms: string;
};

/** What the guide has looked at again: fasteners with their torque, measures with what is expected. */
export function rechecksOf(guide: Pick<Guide, 'items'>, context: GuideContext): readonly RecheckRow[] {
  return [...guide.items.values()].flatMap((item) => {
    if (!('recheck' in item) || !item.recheck) return [];
    const shown = shownWhen(context, item.when);
    const when = recheckWords(item.recheck.value);
    const terms = item.recheck.value.map(({ written, unit }) => `${written} ${unit}`).join(' or ');
    if (item.kind === 'measure') {
      const detail = expectedWords(item) ?? '';
      return [{ ...shown, name: item.noun.label, detail, when, terms }];
    }
    const name = handledCount(item) === 1 ? item.noun.singular : item.noun.plural;
    return [
      {
        ...shown,
        name: `${capitalised(name)}, ${countWords(item)}`,
        detail: itemTorqueWords(item),
        when,
        terms,
      },
    ];
  });
}
