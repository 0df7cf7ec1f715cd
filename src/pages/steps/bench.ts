import type { BenchItem, BenchState } from '../../model/job.ts';
import type { GuideContext, NumberedStep } from '../frame/context.ts';
import { shownIn } from '../frame/plans.ts';
import type { BenchLine } from './step-views.ts';

/** The states that a bench line tells, in the order in which a technician looks for them. */
const states = (vehicle: string): readonly (readonly [keyof Omit<BenchState, 'movement'>, string])[] => [
  ['off', `Off the ${vehicle}`],
  ['apart', 'Unplugged'],
  ['loose', 'Not tight'],
  ['aside', 'Aside'],
  ['on', 'To come off again'],
  ['holds', 'In force'],
];

/** What is off, apart, loose, aside, on or in force when a step is done, and whether the vehicle may be moved. */
export function benchLines(numbered: NumberedStep, context: GuideContext): readonly BenchLine[] {
  const line = (label: string, textOf: (bench: BenchState) => string | null) =>
    linesOf(label, numbered, context, textOf);
  return [
    ...states(context.guide.words.vehicle).flatMap(([state, label]) =>
      line(label, (bench) => itemsWords(bench[state], context)),
    ),
    ...line('Movement', ({ movement }) => movement),
  ];
}

/** One line of the bench, told apart by the builds among which it differs. */
function linesOf(
  label: string,
  { step, plans }: NumberedStep,
  context: GuideContext,
  textOf: (bench: BenchState) => string | null,
): readonly BenchLine[] {
  const byText = new Map<string, typeof plans>();
  for (const plan of plans) {
    const bench = plan.steps.find(({ id }) => id === step.id)?.bench;
    const text = bench ? textOf(bench) : null;
    if (text !== null) byText.set(text, [...(byText.get(text) ?? []), plan]);
  }
  return [...byText].map(([text, own]) => {
    // The step itself tells for which builds it stands; its lines need not say it again.
    const shown = own.length === plans.length ? { plans: null, only: null } : shownIn(context, own);
    return { label, text, ...shown };
  });
}

function itemsWords(items: readonly BenchItem[], context: GuideContext): string | null {
  return items.length === 0 ? null : items.map((item) => benchItemWords(item, context)).join('; ');
}

/** "bumper cover", "6 liner screws", "fog lamp plug (left)". */
export function benchItemWords({ item: id, count, side }: BenchItem, { guide }: GuideContext): string {
  const noun = guide.items.get(id)?.noun;
  const name = count === 1 ? (noun?.singular ?? id) : `${count} ${noun?.plural ?? id}`;
  return side === 'left' || side === 'right' ? `${name} (${guide.words[side]})` : name;
}
