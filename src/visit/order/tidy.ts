/** A step as it counts for one technician: minutes, and what must come before it. */
interface Task {
  readonly minutes: number;
  readonly wait: number;
  readonly after: readonly { readonly step: string; readonly wait: number }[];
}

/** The steps of a build as one technician does them. */
export type Tasks = ReadonlyMap<string, Task>;

/** When one technician is done who works in an order, waits too; `null` where the order breaks a link. */
export function elapsedInOrder(order: readonly string[], tasks: Tasks): number | null {
  const ends = new Map<string, number>();
  let now = 0;
  let last = 0;
  for (const id of order) {
    const task = tasks.get(id);
    if (!task) continue;
    let start = now;
    for (const { step, wait } of task.after) {
      const end = ends.get(step);
      if (end === undefined) return null;
      start = Math.max(start, end + wait);
    }
    now = start + task.minutes;
    ends.set(id, now);
    last = Math.max(last, now + task.wait);
  }
  return last;
}

/**
 * An order that is no slower and goes back and forth between guides no more than it must: stretches of one guide's
 * work are joined with the one before or behind, as far as the links allow, until none can be.
 *
 * @param workOf the guides whose work a step is, as one text
 */
export function tidied(
  order: readonly string[],
  tasks: Tasks,
  workOf: (step: string) => string,
): readonly string[] {
  let best = order;
  let elapsed = elapsedInOrder(order, tasks) ?? Number.POSITIVE_INFINITY;
  for (let before = -1; before !== switches(best, workOf); ) {
    before = switches(best, workOf);
    for (const next of joined(best, workOf)) {
      const time = elapsedInOrder(next, tasks);
      if (time === null || time > elapsed + SAME || switches(next, workOf) >= switches(best, workOf))
        continue;
      best = next;
      elapsed = Math.min(elapsed, time);
      break;
    }
  }
  return best;
}

/** Minutes within which two times are one: sums of the same numbers in another order. */
const SAME = 1e-6;

/** How often an order goes from one guide's work to another's. */
export function switches(order: readonly string[], workOf: (step: string) => string): number {
  return order.filter((id, place) => place > 0 && workOf(id) !== workOf(order[place - 1] ?? '')).length;
}

/** Every order in which one stretch has moved to the next one of its kind, before or behind it. */
function* joined(order: readonly string[], workOf: (step: string) => string): Generator<readonly string[]> {
  const runs: string[][] = [];
  for (const id of order) {
    const open = runs.at(-1);
    if (open && workOf(open[0] ?? '') === workOf(id)) open.push(id);
    else runs.push([id]);
  }
  for (const [from, run] of runs.entries()) {
    const work = workOf(run[0] ?? '');
    const isAlike = (other: readonly string[]) => workOf(other[0] ?? '') === work;
    const behind = runs.findIndex((other, place) => place > from && isAlike(other));
    const before = runs.findLastIndex((other, place) => place < from && isAlike(other));
    const rest = runs.filter((_, place) => place !== from);
    // Behind the stretch before it, in front of the stretch behind it; positions count without the stretch itself.
    if (before >= 0) yield rest.toSpliced(before + 1, 0, run).flat();
    if (behind >= 0) yield rest.toSpliced(behind - 1, 0, run).flat();
  }
}
