import { capitalised } from '../../job/words/noun.ts';
import type { Step } from '../../model/guide.ts';
import type { Ref } from '../../model/inline.ts';
import type { Side } from '../../model/item.ts';
import type { PlannedStep } from '../../model/job.ts';
import type { TradeWords } from '../../trade/words.ts';
import { formatEstimate, formatMinutes } from '../../units/estimate.ts';
import { type GuideContext, type NumberedStep, shownStep } from '../frame/context.ts';
import { always, shownIn } from '../frame/plans.ts';
import { proseMarkup } from '../frame/prose.ts';
import type { Shown, VaryingView } from '../frame/shared-views.ts';
import { blockViews } from './blocks.ts';
import { cablesOf } from './cables.ts';
import { settingsOf } from './evidence.ts';
import { inspectionsOf } from './inspections.ts';
import { placeView } from './place.ts';
import { expectedWords, readingsOf } from './readings.ts';
import type { StepView } from './step-views.ts';
import { stacksOf } from './tightening/stacks.ts';
import { drawnOrder, tighteningOrders } from './tightening/tightening.ts';
import { torquesOf } from './tightening/torques.ts';
import { undoneFigures } from './undone-figures.ts';

/** One step as the page prints it. */
export function stepView(numbered: NumberedStep, context: GuideContext): StepView {
  const { step, number } = numbered;
  const stepSide = step.side?.value ?? null;
  const tools = itemsOf(numbered, context, (planned) => planned.tools);
  const wear = itemsOf(numbered, context, (planned) => planned.wear);
  const torques = torquesOf(step, context);
  const cables = cablesOf(step, context);
  const settings = settingsOf(step, context);
  const lines = [tools, wear, torques, cables, settings];
  const orders = tighteningOrders(step, context);
  const blocks = [
    ...blockViews(step.blocks, context, stepSide, `step ${step.id}`, orders),
    ...undoneFigures(step, context, orders),
  ];
  const onFigures = blocks.flatMap((block) => (block.type === 'figure' && block.order ? block.order.of : []));
  return {
    ...shownStep(context, numbered),
    id: step.id,
    number,
    changed: context.marks.steps.has(step.id),
    title: proseMarkup(step.title, { context, stepSide }),
    place: placeView(step, context),
    facts: [sideWords(stepSide, context.guide.words), timeWords(numbered), peopleWords(step.people)].filter(
      (fact) => fact !== null,
    ),
    needs: step.needs.map((ref) => context.guide.items.get(ref.value)?.noun.singular ?? ref.value),
    blocks,
    tools,
    wear,
    torques,
    orders: orders.filter(({ item }) => !onFigures.includes(item)).map(drawnOrder),
    ...stacksOf(step, context),
    cables,
    settings,
    inspections: inspectionsOf(step, context),
    stop: step.stop,
    times: step.times?.value ?? null,
    rounds: roundsOf(step, context.guide.words),
    until: step.until && untilWords(step.until, context),
    hasLines: lines.some(({ length }) => length > 0) || step.wait !== null,
    readings: readingsOf(step.blocks, context, stepSide),
    wait: step.wait ? formatMinutes(step.wait.value) : null,
    signOff: step.signOff,
    anyOrder: anyOrderWords(numbered),
  };
}

/** What stands at the box of each time that a step is done: "2", or "left 2" where it is done on each side. */
function roundsOf({ times, side }: Step, { left, right }: TradeWords): readonly string[] {
  const numbers = Array.from({ length: times?.value ?? 0 }, (_, round) => String(round + 1));
  if (side?.value !== 'each') return numbers;
  return [left, right].flatMap((word) => numbers.map((number) => `${word} ${number}`));
}

/** "toe at the front: 1 to 2 mm". */
function untilWords({ value }: Ref, { guide }: GuideContext): string {
  const item = guide.items.get(value);
  if (item?.kind !== 'measure') return value;
  return `the ${item.noun.singular} reads ${expectedWords(item) ?? 'as it should'}`;
}

/** Said only where it is true in every build that does the step. */
function anyOrderWords({ step, plans }: NumberedStep): string | null {
  const own = plans.flatMap(({ steps }) => steps.filter(({ id }) => id === step.id));
  const before = own.every(({ free }) => free.before);
  const after = own.every(({ free }) => free.after);
  if (before && after) return 'This step may be done before or after its neighbours.';
  if (before) return 'This step may be done before the one above it.';
  return after ? 'This step may be done after the one below it.' : null;
}

/** "Left side, then right side", in the words of the vehicle; `null` for a step of no side. */
export function sideWords(side: Side | null, { left, right }: TradeWords): string | null {
  switch (side) {
    case 'each':
      return `${capitalised(left)} side, then ${right} side`;
    case 'left':
      return `${capitalised(left)} side`;
    case 'right':
      return `${capitalised(right)} side`;
    case null:
      return null;
  }
}

function timeWords({ step, plans }: NumberedStep): string | null {
  const time = plans[0]?.steps.find(({ id }) => id === step.id)?.time;
  if (!time) return null;
  return step.side?.value === 'each' ? `${formatEstimate(time)} for both` : formatEstimate(time);
}

/** "2 people"; `null` where one does it alone. */
export function peopleWords(people: number): string | null {
  return people > 1 ? `${people} people` : null;
}

/** Tools or protective equipment of a step, by the names on the gather list. */
function itemsOf(
  { step, plans }: NumberedStep,
  context: GuideContext,
  idsOf: (planned: PlannedStep) => readonly string[],
): readonly VaryingView[] {
  const idsIn = (plan: (typeof plans)[number]) =>
    plan.steps.filter(({ id }) => id === step.id).flatMap(idsOf);
  const ids = [...new Set(plans.flatMap(idsIn))];
  return ids.map((id) => {
    const using = plans.filter((plan) => idsIn(plan).includes(id));
    const shown: Shown = using.length === plans.length ? always : shownIn(context, using);
    return { ...shown, text: context.guide.items.get(id)?.noun.label ?? id };
  });
}
