import type { Guide } from '../model/guide.ts';
import type { Item, Supply } from '../model/item.ts';
import type { GatherKit, GatherList, GatherSupply, GatherTool, GatherWear, Job } from '../model/job.ts';
import type { Schedule } from '../model/schedule.ts';
import type { Build } from '../model/when.ts';
import { isIn, sectionsOf, type Use, usesOf } from './actions/uses.ts';
import { isCounted, totalCount } from './words/phrase.ts';

/** What must be within reach for a build: every declared thing once, in the order of declaration. */
export function gatherList(guide: Guide, build: Build, schedules: readonly Schedule[]): GatherList {
  const uses = sectionsOf(guide, build).flatMap((section) => usesOf(section, guide, build));
  const byItem = new Map<string, Use[]>();
  for (const use of uses) {
    const others = byItem.get(use.item);
    if (others) others.push(use);
    else byItem.set(use.item, [use]);
  }
  const tools: GatherTool[] = [];
  const wear: GatherWear[] = [];
  const supplies: GatherSupply[] = [];
  const kit: GatherKit[] = [];
  for (const item of guide.items.values()) {
    if (!isIn(item, build)) continue;
    const own = byItem.get(item.id) ?? [];
    const steps = [...new Set(own.flatMap(({ step }) => (step ? [step.id] : [])))];
    const firstStep = steps[0] ?? null;
    if (item.kind === 'tool')
      tools.push({ item: item.id, firstStep, steps, atOnce: atOnce(steps, schedules) });
    else if (item.kind === 'wear') wear.push({ item: item.id, firstStep });
    else if (item.kind === 'supply') supplies.push({ ...supplyLine(item, own), firstStep });
    else if (item.kind === 'kit') kit.push({ ...kitLine(item), firstStep });
  }
  return { tools, wear, supplies, kit };
}

/** The most of some steps that any schedule has in work at the same time; one that has no time counts as one. */
function atOnce(steps: readonly string[], schedules: readonly Schedule[]): number {
  const together = schedules.flatMap(({ tasks }) => {
    const own = tasks.filter(({ step }) => steps.includes(step));
    return own.map(({ start }) => own.filter((task) => task.start <= start && start < task.finish).length);
  });
  return Math.max(1, ...together);
}

/** The amounts are per side and time: a step that is done on each side uses its amount twice. */
function supplyLine(supply: Supply, uses: readonly Use[]): Omit<GatherSupply, 'firstStep'> {
  const amounts = uses.flatMap(({ action, step }) =>
    action?.amount
      ? [{ amount: action.amount, times: (step?.side?.value === 'each' ? 2 : 1) * (step?.times?.value ?? 1) }]
      : [],
  );
  return {
    item: supply.id,
    declared: supply.quantity?.value ?? null,
    used:
      amounts.length === 0
        ? null
        : amounts.reduce((sum, { amount, times }) => sum + amount.value.base * times, 0),
    from: amounts.map(({ amount }) => amount.at),
  };
}

function kitLine(item: Item): Omit<GatherKit, 'firstStep'> {
  const sided = isCounted(item) && item.side?.value === 'each';
  return {
    item: item.id,
    count: totalCount(item),
    perSide: sided ? item.count.value : null,
    spare: item.kind === 'kit' ? (item.spare?.value ?? 0) : 0,
  };
}

/** What every line of a gather list has, whatever it lists. */
export interface GatherLine {
  readonly item: string;
  readonly firstStep: string | null;
}

/** The lines that a plan uses, and those that none does: what other builds alone use need not be at hand. */
export function whereUsed<L extends GatherLine>(
  lines: readonly L[],
  list: (gather: GatherList) => readonly L[],
  job: Pick<Job, 'plans'>,
): readonly L[] {
  const used = new Set(
    job.plans.flatMap(({ gather }) => list(gather).flatMap((line) => (line.firstStep ? [line.item] : []))),
  );
  return lines.filter(({ item, firstStep }) => firstStep !== null || !used.has(item));
}
