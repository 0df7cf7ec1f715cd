import type { BenchState, Plan } from '../../model/job.ts';
import { type GuideContext, stepRef } from '../frame/context.ts';
import { shownIn } from '../frame/plans.ts';
import type { Shown, StepRef } from '../frame/shared-views.ts';
import { benchItemWords } from '../steps/bench.ts';

/** The things of one state of the vehicle, in the order in which they come into it. */
export interface CourseView {
  /** "Off the vehicle". */
  readonly state: string;
  readonly rows: readonly CourseRow[];
}

/** What comes into a state with one step and leaves it with another. */
interface CourseRow extends Shown {
  /** "panel; 4 screws". */
  readonly text: string;
  readonly from: NumberedRef;
  /** `null` for what stays so when the job is done. */
  readonly until: NumberedRef | null;
}

type NumberedRef = Pick<StepRef, 'id' | 'number'>;

/** The states that are told, in the order in which a technician looks for them. */
const states = (vehicle: string): readonly (readonly [keyof BenchState, string])[] => [
  ['off', `Off the ${vehicle}`],
  ['apart', 'Unplugged'],
  ['loose', 'Not tight'],
  ['aside', 'Aside'],
  ['on', 'To come off again'],
  ['holds', 'In force'],
  ['movement', 'Movement'],
];

/**
 * What is off, apart, loose, aside, on or in force, and whether the vehicle may be moved, from which step until which.
 * That is the vehicle after each step in as many lines as change: its whole state told at each step would grow with
 * the square of the steps. The page's script tells it so (`templates/scripts/guide/after-step.ts`), from these rows.
 */
export function courseViews(context: GuideContext): readonly CourseView[] {
  return states(context.guide.words.vehicle).flatMap(([name, state]) => {
    const rows = rowsOf(name, context);
    return rows.length > 0 ? [{ state, rows }] : [];
  });
}

/** A thing that stays in a state from one step until another, by their ids. */
interface Stay {
  readonly text: string;
  readonly from: string;
  readonly until: string | null;
  readonly plans: Plan[];
}

function rowsOf(state: keyof BenchState, context: GuideContext): readonly CourseRow[] {
  const stays = new Map<string, Stay>();
  for (const plan of context.job.plans) {
    for (const { thing, ...stay } of staysIn(plan, state, context)) {
      const key = [thing, stay.from, stay.until].join('\n');
      const known = stays.get(key) ?? { ...stay, plans: [] };
      known.plans.push(plan);
      stays.set(key, known);
    }
  }
  const rows = new Map<string, CourseRow>();
  for (const { text, from: came, until: left, plans } of stays.values()) {
    const from = stepRef(context, came);
    if (!from) continue;
    const until = left === null ? null : stepRef(context, left);
    const shown = shownIn(context, plans);
    const key = [came, left, shown.plans].join('\n');
    const known = rows.get(key);
    rows.set(key, { text: known ? `${known.text}; ${text}` : text, from, until, ...shown });
  }
  return [...rows.values()].toSorted((a, b) => a.from.number - b.from.number);
}

/** The stays of one plan: what is in the state when a step is done came with it, or was so before. */
function staysIn(plan: Plan, state: keyof BenchState, context: GuideContext) {
  const stays: (Omit<Stay, 'plans'> & { readonly thing: string })[] = [];
  let open = new Map<string, { readonly text: string; readonly from: string }>();
  for (const { id, bench } of plan.steps) {
    const now = new Map<string, { readonly text: string; readonly from: string }>();
    for (const [thing, words] of thingsIn(bench, state, context))
      now.set(thing, open.get(thing) ?? { text: words(), from: id });
    for (const [thing, stay] of open) if (!now.has(thing)) stays.push({ thing, ...stay, until: id });
    open = now;
  }
  return [...stays, ...[...open].map(([thing, stay]) => ({ thing, ...stay, until: null }))];
}

/** What is in a state, each by what tells it from others, and its words: asked for only as it comes into the state. */
function thingsIn(
  bench: BenchState,
  state: keyof BenchState,
  context: GuideContext,
): readonly (readonly [thing: string, words: () => string])[] {
  if (state === 'movement') return [[bench.movement, () => bench.movement]];
  return bench[state].map((item) => [
    `${item.item} ${item.count} ${item.side}`,
    () => benchItemWords(item, context),
  ]);
}
