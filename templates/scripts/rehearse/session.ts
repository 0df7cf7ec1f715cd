import { hasJoints, judgeFixings } from '../../../src/job/dry-run/judge-fixings.ts';
import { copyLedger, type Fault, type Ledger, openLedger } from '../../../src/job/dry-run/ledger.ts';
import type { Lot } from '../../../src/job/dry-run/lot.ts';
import { begin, type Change, close, finish, makeMove } from '../../../src/job/dry-run/play.ts';
import { scriptFrom } from '../../../src/job/dry-run/portable.ts';
import type { Deed, Scene, Script } from '../../../src/job/dry-run/script.ts';
import type { StateName } from '../../../src/model/violation.ts';
import type { RehearsalData } from '../../../src/pages/rehearsal/rehearsal-data.ts';

/** Something that is chosen: an action on one side, or a step or a proof that is done as a whole. */
export interface Task {
  /** Position in the order of the guide. */
  readonly index: number;
  /** Position of its step or proof among the scenes of the ledger. */
  readonly scene: number;
  /** The id of its step; `null` for a proof. */
  readonly step: string | null;
  /** `null` for what is done as a whole. */
  readonly move: Deed | null;
  /** Position of its action; `null` for what is done as a whole. */
  readonly action: number | null;
  /** What tells it from all others, in this edition and the next: no position stands in it. */
  readonly key: string;
}

/** What is said to a choice. */
export type Verdict =
  /** It can be done; `later` where the guide does something else first. */
  | { readonly kind: 'done'; readonly later: boolean }
  | { readonly kind: 'done-before' }
  /** It cannot be done as things stand. */
  | { readonly kind: 'refused'; readonly faults: readonly Fault[] }
  /** Its step waits for another, as the guide says. */
  | { readonly kind: 'after'; readonly step: string }
  /** Another of the same sequence comes first. */
  | { readonly kind: 'out-of-turn'; readonly first: number }
  /** It can be done, and then something else no longer can: the work that fails, or the end. */
  | { readonly kind: 'bars'; readonly faults: readonly Fault[]; readonly task: number | null };

/** How a lot stands. */
export interface Standing {
  readonly lot: Lot;
  readonly state: StateName;
  /** Nothing holds it any more, and it has not been lifted. */
  readonly hangs: boolean;
}

/** A guide in one build, ready to be rehearsed in any order. */
export interface Session {
  readonly tasks: readonly Task[];
  /** What would be said to a task after others, which were done in that order. */
  readonly judge: (done: readonly number[], task: number) => Verdict;
  /** How everything stands after some tasks. */
  readonly standing: (done: readonly number[]) => readonly Standing[];
}

/** Work as far as it has been played; it can be copied, and played on. */
interface Played {
  /** What has been done, in that order. */
  readonly order: number[];
  readonly ledger: Ledger;
  readonly changes: Change[];
  /** How many tasks of each scene are still to do. */
  readonly toDo: number[];
}

/** Opens a rehearsal of one plan of a guide. */
export function openSession(data: RehearsalData, plan: number): Session {
  const script = scriptFrom(data.ledger, plan);
  const tasks = tasksOf(script, data);
  const inOrder = tasks.map(({ index }) => index);
  // Without joints, and steps that end the job, each fault shows with the task that makes it.
  const looksBack = hasJoints(script) || script.scenes.some(({ ends }) => ends !== 0n);

  function nothingDone(): Played {
    const toDo = script.scenes.map(() => 0);
    for (const { scene } of tasks) toDo[scene] = (toDo[scene] ?? 0) + 1;
    return { order: [], ledger: openLedger(script), changes: [], toDo };
  }

  function copyOf({ order, ledger, changes, toDo }: Played): Played {
    return { order: [...order], ledger: copyLedger(ledger), changes: [...changes], toDo: [...toDo] };
  }

  function playOn({ order, ledger, changes, toDo }: Played, index: number): void {
    const task = tasks[index];
    const scene = task && script.scenes[task.scene];
    if (!task || !scene) throw new Error(`there is no task ${index}`);
    const changed = looksBack ? (change: Change) => changes.push(change) : () => {};
    const onlooker = { changed, stepDone: () => {} };
    if (tasks[order.at(-1) ?? -1]?.scene !== task.scene) begin(scene, ledger);
    order.push(index);
    if (task.move) makeMove(scene, task.move, order.length, ledger, onlooker);
    const left = (toDo[task.scene] ?? 0) - 1;
    toDo[task.scene] = left;
    if (left === 0) finish(scene, ledger, onlooker);
  }

  function played(from: Played, order: readonly number[]): Played {
    const next = copyOf(from);
    for (const index of order) playOn(next, index);
    return next;
  }

  function faultsOf({ order, ledger, changes }: Played, isAll: boolean): readonly Fault[] {
    const seen = isAll || looksBack ? copyLedger(ledger) : ledger;
    if (seen !== ledger) {
      const scenes = scenesOf(order, tasks, script);
      close(scenes, seen, isAll);
      judgeFixings(changes, seen, scenes);
    }
    return seen.faults.map(({ fault }) => fault);
  }

  // Of what a guide is published with, no trainee is told.
  const known = new Set(faultsOf(played(nothingDone(), inOrder), true).map(faultKey));

  /** What is wrong with an order that is not wrong with the guide's own. */
  const wrong = (order: Played, isAll: boolean) => notKnown(faultsOf(order, isAll));
  const notKnown = (faults: readonly Fault[]) => faults.filter((fault) => !known.has(faultKey(fault)));
  /** Of that, what each task showed as it was done. */
  const wrongSoFar = ({ ledger }: Played) => notKnown(ledger.faults.map(({ fault }) => fault));

  // Each question is about the same work as the one before, or a little more: that is played once.
  let latest = nothingDone();
  function stand(done: readonly number[]): Played {
    const goesOn = latest.order.every((index, place) => done[place] === index);
    latest = goesOn ? played(latest, done.slice(latest.order.length)) : played(nothingDone(), done);
    return latest;
  }

  function judge(done: readonly number[], index: number): Verdict {
    const before = new Set(done);
    if (before.has(index)) return { kind: 'done-before' };
    const task = tasks[index];
    if (!task) throw new Error(`there is no task ${index}`);
    const next = played(stand(done), [index]);
    const faults = wrong(next, false);
    if (faults.length > 0) return { kind: 'refused', faults };
    const link = linkOf(task, before);
    if (link) return link;
    const rest = inOrder.filter((one) => one !== index && !before.has(one));
    const first = Math.min(index, ...rest);
    return whatFails(next, rest) ?? { kind: 'done', later: first !== index };
  }

  /** What the ledger cannot know: steps that the guide puts one after another, and the turns of a sequence. */
  function linkOf(task: Task, before: ReadonlySet<number>): Verdict | null {
    const after = task.step === null ? [] : (data.steps[task.step]?.after ?? []);
    const step = after.find((id) => tasks.some((one) => one.step === id && !before.has(one.index)));
    if (step !== undefined) return { kind: 'after', step };
    const turn = task.action === null ? null : data.actions[task.action]?.sequence;
    if (!turn) return null;
    const first = tasks.find(
      (one) =>
        one.scene === task.scene &&
        one.index < task.index &&
        !before.has(one.index) &&
        one.action !== null &&
        data.actions[one.action]?.sequence?.label === turn.label,
    );
    return first ? { kind: 'out-of-turn', first: first.index } : null;
  }

  /**
   * Whether the rest can still be done: in the order of the guide, or with what does not go yet put off. Where it
   * cannot, what the order of the guide stumbles over first.
   */
  function whatFails(from: Played, rest: readonly number[]): Verdict | null {
    const straight = copyOf(from);
    const goes = rest.findIndex((index) => {
      playOn(straight, index);
      return wrongSoFar(straight).length > 0;
    });
    if (goes < 0 && wrong(straight, true).length === 0) return null;
    // What goes in the order of the guide is not tried once more, unless what comes later may show a fault in it.
    const gone = looksBack ? 0 : goes < 0 ? rest.length : goes;
    let now = played(from, rest.slice(0, gone));
    let left = rest.slice(gone);
    let stumble: Verdict | null = null;
    while (left.length > 0) {
      const late: number[] = [];
      for (const index of left) {
        const tried = played(now, [index]);
        const faults = wrong(tried, false);
        if (faults.length === 0) now = tried;
        else {
          const shows = faults.some((fault) => isAt(tasks[index], fault));
          stumble ??= { kind: 'bars', faults, task: shows ? index : null };
          late.push(index);
        }
      }
      if (late.length === left.length) return stumble;
      left = late;
    }
    const end = wrong(now, true);
    return end.length > 0 ? { kind: 'bars', faults: end, task: null } : null;
  }

  return {
    tasks,
    judge,
    standing: (done) => {
      const { ledger } = stand(done);
      return script.lots.flatMap((lot) => {
        const [cell] = (ledger.cells[lot.index] ?? []).filter(({ set }) => set !== 0n);
        return cell ? [{ lot, state: cell.state, hangs: ledger.hanging[lot.index] !== 0n }] : [];
      });
    },
  };
}

/** Apart from the place in the order, what a fault tells. */
function faultKey(fault: Fault): string {
  const what = Object.values(fault).filter((value) => typeof value === 'string');
  return [fault.step?.id ?? '', fault.action?.at.start ?? '', fault.side ?? '', ...what].join('\n');
}

/** Whether a fault shows at a task. */
function isAt(task: Task | undefined, { action, step, side, at }: Fault): boolean {
  if (!task) return false;
  if (!action) return at.file === 'scene' && task.scene === at.start;
  const { move } = task;
  if (move?.action !== action || move.step !== step) return false;
  return side === null || move.side === null || move.side === side;
}

function tasksOf(script: Script, data: RehearsalData): readonly Task[] {
  const trials = new Set(
    script.scenes.flatMap(({ moves }) => moves.map(({ action }) => action.trial?.value)),
  );
  const tasks: Task[] = [];
  const times = new Map<string, number>();
  const add = (scene: number, step: string | null, move: Deed | null) => {
    const action = move ? move.action.at.start : null;
    const print = step === null ? '' : (data.steps[step]?.fingerprint ?? '');
    const what = move
      ? `${move.action.verb} ${move.action.target.value} ${move.side ?? ''}`
      : (data.titles[scene] ?? '');
    const name = `${step ?? ''} ${print} ${what}`;
    const time = times.get(name) ?? 0;
    times.set(name, time + 1);
    tasks.push({ index: tasks.length, scene, step, move, action, key: `${name} ${time}` });
  };
  for (const [scene, { step, set, moves }] of script.scenes.entries()) {
    if (set === 0n) continue;
    const own = moves.filter(
      (move) => move.set !== 0n && move.lots.some(({ index }) => script.lotSets[index] !== 0n),
    );
    for (const move of own) add(scene, step?.id ?? null, move);
    // What no action tells is done as a whole: a trial fit, a step in words alone, a proof.
    if (own.length === 0 || step === null || trials.has(step.id)) add(scene, step?.id ?? null, null);
  }
  return tasks;
}

/** An order of tasks as scenes: what is done of a step without a break is one. */
function scenesOf(order: readonly number[], tasks: readonly Task[], script: Script): readonly Scene[] {
  const done = new Map<number, number>();
  const all = new Map<number, number>();
  for (const { scene } of tasks) all.set(scene, (all.get(scene) ?? 0) + 1);
  const runs: { scene: number; moves: Deed[]; whole: boolean }[] = [];
  for (const index of order) {
    const task = tasks[index];
    if (!task) continue;
    const { scene, move } = task;
    let run = runs.at(-1);
    if (run?.scene !== scene) {
      run = { scene, moves: [], whole: false };
      runs.push(run);
    }
    if (move) run.moves.push(move);
    done.set(scene, (done.get(scene) ?? 0) + 1);
    run.whole = done.get(scene) === all.get(scene);
  }
  return runs.flatMap(({ scene, moves, whole }, place) => {
    const own = script.scenes[scene];
    return own ? [{ ...own, moves, whole, left: whole || place < runs.length - 1 }] : [];
  });
}
