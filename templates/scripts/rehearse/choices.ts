import type { Session, Task } from './session.ts';
import type { Speaker } from './words.ts';

/** How many choices are offered at once, and how many of them can be done besides what the guide has next. */
const OFFERED = 6;
const OTHERS_THAT_GO = 2;

/** How many tasks are held against the ledger to find them. */
const TRIED = 12;

/** What is offered next. */
export interface Choices {
  /** A few, in the order of the alphabet, so that nothing tells which goes. */
  readonly offered: readonly Task[];
  /** All else that is left, in the order of the guide. */
  readonly others: readonly Task[];
}

/**
 * Some of what is left to do: what the guide has next, others that go, and some that do not go yet or bar the rest.
 * Which they are follows from how far the work has come, so that a page that is opened again asks the same.
 */
export function choicesOf(session: Session, done: readonly number[], say: Speaker): Choices {
  const before = new Set(done);
  const left = distinct(
    session.tasks.filter(({ index }) => !before.has(index)),
    say,
  );
  const [next, ...rest] = left;
  if (!next) return { offered: [], others: [] };
  const goes: Task[] = [];
  const balks: Task[] = [];
  for (const task of spread(rest, done.length).slice(0, TRIED)) {
    if (goes.length + balks.length + 1 >= OFFERED) break;
    if (session.judge(done, task.index).kind !== 'done') balks.push(task);
    else if (goes.length < OTHERS_THAT_GO) goes.push(task);
  }
  const offered = [next, ...goes, ...balks].slice(0, OFFERED);
  const byText = (a: Task, b: Task) => (say.task(a) < say.task(b) ? -1 : 1);
  return { offered: offered.toSorted(byText), others: left.filter((task) => !offered.includes(task)) };
}

/** Of tasks that read alike, the first: what a trainee cannot tell apart is not asked apart. */
function distinct(tasks: readonly Task[], say: Speaker): readonly Task[] {
  const byText = new Map<string, Task>();
  for (const task of tasks) if (!byText.has(say.task(task))) byText.set(say.task(task), task);
  return [...byText.values()];
}

/** Near ones and far ones by turns, beginning elsewhere each time. */
function spread(tasks: readonly Task[], turn: number): readonly Task[] {
  const near = tasks.slice(0, 4);
  const far = tasks.slice(4);
  const from = far.length === 0 ? 0 : (turn * 7) % far.length;
  const stride = Math.max(1, Math.floor(far.length / TRIED));
  const picked = far.map((_, place) => far[(from + place * stride) % far.length]);
  const seen = new Set<Task>();
  return [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]
    .flatMap((place) => [near[place], picked[2 * place], picked[2 * place + 1]])
    .filter((task) => task !== undefined && !seen.has(task) && seen.add(task) !== undefined)
    .flatMap((task) => task ?? []);
}
