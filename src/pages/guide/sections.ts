import { markup } from '../../html/markup.ts';
import type { Guide, NoneKind, Section } from '../../model/guide.ts';
import type { Item, ItemKind } from '../../model/item.ts';
import type { TradeWords } from '../../trade/words.ts';
import { formatEstimate } from '../../units/estimate.ts';
import { type GuideContext, shownSection } from '../frame/context.ts';
import { always, shownIn, varying } from '../frame/plans.ts';
import { proseMarkup } from '../frame/prose.ts';
import type { Shown } from '../frame/shared-views.ts';
import { comesOffRows, isOfVehicle } from '../overview/comes-off.ts';
import { gatherView } from '../overview/gather.ts';
import { isLimit, limitRows } from '../overview/limits.ts';
import type { ComesOffRow, GatherView, LimitRow } from '../overview/list-views.ts';
import { blockViews } from '../steps/blocks.ts';
import { stepView } from '../steps/steps.ts';
import type { SectionView } from './guide-views.ts';

/**
 * The sections of a guide. The gather list and the list of what comes off stand under the headings beneath
 * which the author declared them; where there is no such heading they get one of their own, in front.
 */
export function sectionViews(guide: Guide, context: GuideContext): readonly SectionView[] {
  const gather = gatherView(
    context,
    guide.nones.map(({ of }) => noneWords(of, guide.words)),
  );
  const comesOff = comesOffRows(context);
  const limits = limitRows(context);
  const gatherAt = declaringSection(guide, (item) => gathered.has(item.kind));
  const comesOffAt = declaringSection(guide, isOfVehicle);
  const limitsAt = declaringSection(guide, isLimit);
  const sections = guide.sections.map((section) =>
    sectionView(section, guide, context, {
      gather: section === gatherAt ? gather : null,
      comesOff: section === comesOffAt && comesOff.length > 0 ? comesOff : null,
      limits: section === limitsAt && limits.length > 0 ? limits : null,
    }),
  );
  const own = [
    gatherAt || isEmptyGather(gather) ? null : ownSection('list_need', 'What you need', { gather }),
    comesOffAt || comesOff.length === 0 ? null : ownSection('list_off', 'What comes off', { comesOff }),
    limitsAt || limits.length === 0 ? null : ownSection('list_limits', 'Limits and loads', { limits }),
  ];
  return [...own.filter((section) => section !== null), ...sections];
}

interface Lists {
  readonly gather: GatherView | null;
  readonly comesOff: readonly ComesOffRow[] | null;
  readonly limits: readonly LimitRow[] | null;
}

const noLists: Lists = { gather: null, comesOff: null, limits: null };

const gathered: ReadonlySet<ItemKind> = new Set<ItemKind>(['wear', 'tool', 'supply', 'kit']);

/** The section of the guide's own file under which the first such item is declared. */
function declaringSection(guide: Guide, wanted: (item: Item) => boolean): Section | undefined {
  const first = [...guide.items.values()].find((item) => item.at.file === guide.file && wanted(item));
  if (!first) return undefined;
  return guide.sections.findLast(({ at }) => at.file === guide.file && at.start <= first.at.start);
}

function sectionView(section: Section, guide: Guide, context: GuideContext, lists: Lists): SectionView {
  const steps = section.steps.flatMap((step) => {
    const numbered = context.steps.get(step.id);
    return numbered ? [stepView(numbered, context)] : [];
  });
  const intro = blockViews(section.intro, context, null, `section ${section.id}`);
  const stepsAlone = intro.length === 0 && !Object.values(lists).some((list) => list !== null);
  return {
    ...(stepsAlone ? shownWithSteps(section, context) : shownSection(section, guide, context)),
    id: section.id,
    title: proseMarkup(section.title, { context, stepSide: null }),
    level: Math.max(2, section.depth),
    empty: stepsAlone && steps.length === 0,
    intro,
    ...lists,
    time: varying(context, ({ time }) => {
      const total = time.sections.find((one) => one.section === section.id);
      return total && total.estimate.most > 0 ? formatEstimate(total.estimate) : null;
    }),
    steps,
  };
}

/** A heading that stands over steps alone goes with them. */
function shownWithSteps({ steps }: Section, context: GuideContext): Shown {
  const planned = new Set(steps.flatMap(({ id }) => context.steps.get(id)?.plans ?? []));
  const plans = context.job.plans.filter((plan) => planned.has(plan));
  return plans.length === 0 ? always : shownIn(context, plans);
}

function ownSection(id: string, title: string, lists: Partial<Lists>): SectionView {
  return {
    ...always,
    id,
    title: markup(title),
    level: 2,
    empty: false,
    intro: [],
    time: [],
    steps: [],
    ...noLists,
    ...lists,
  };
}

function isEmptyGather({ wear, tools, supplies, kit, nones }: GatherView): boolean {
  return wear.length + tools.length + supplies.length + kit.length + nones.length === 0;
}

function noneWords(of: NoneKind, { vehicle }: TradeWords): string {
  switch (of) {
    case 'wear':
      return 'No protective equipment is needed.';
    case 'tools':
      return 'No tools are needed.';
    case 'supplies':
      return 'No supplies are needed.';
    case 'kit':
      return 'Nothing comes in a box.';
    case 'conditions':
      return `The ${vehicle} needs no special condition before work begins.`;
  }
}
