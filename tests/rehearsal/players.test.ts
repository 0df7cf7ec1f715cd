import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { judgeFixings } from '../../src/job/dry-run/judge-fixings.ts';
import { copyLedger, type Fault, type Ledger, openLedger } from '../../src/job/dry-run/ledger.ts';
import { begin, type Change, close, finish, makeMove, play } from '../../src/job/dry-run/play.ts';
import { type Scene, type Script, scriptOf } from '../../src/job/dry-run/script.ts';
import type { Guide } from '../../src/model/guide.ts';
import type { Job, PlannedStep } from '../../src/model/job.ts';
import { firstBuilds } from '../../src/pages/rehearsal/rehearsal.ts';
import { diskFiles } from '../../src/shop/index.ts';
import { inspectGuide } from '../../src/shop/inspect/inspect-guide.ts';
import { openWorkspace } from '../../src/shop/open-workspace.ts';
import type { Session, Task } from '../../templates/scripts/rehearse/session.ts';
import { pictureStore } from '../picture-store.ts';
import { long, sampleOf, samples } from '../samples.ts';
import { bundled, published } from './bundle.ts';

const workspace = await openWorkspace(
  diskFiles(resolve(import.meta.dirname, '../../guides')),
  await pictureStore(),
  null,
);
const { openSession } = await bundled();

/** Chance that is the same in each run: a linear congruential generator (Numerical Recipes, 7.1). */
function chance(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return Math.floor((state / 4294967296) * below);
  };
}

/** Work in the checker's hands, which can be copied and played on. */
interface Stand {
  readonly order: readonly number[];
  readonly ledger: Ledger;
  readonly changes: readonly Change[];
}

/** The checker itself, on the guide as it was read, held against any order of its work. */
interface Checker {
  readonly nothingDone: Stand;
  readonly playOn: (stand: Stand, index: number) => Stand;
  /** Of a stand that has been played on from another. */
  readonly faultsOf: (stand: Stand) => readonly Fault[];
  /** Of an order that is played from its beginning. */
  readonly faultsOfOrder: (order: readonly number[]) => readonly Fault[];
}

function checker(guide: Guide, job: Job, plan: number, tasks: readonly Task[]): Checker {
  const script: Script = scriptOf(guide, firstBuilds(job).slice(plan, plan + 1), null);
  const whole = new Map<number, number>();
  for (const { scene } of tasks) whole.set(scene, (whole.get(scene) ?? 0) + 1);
  // The tasks of a scene stand in the order of its moves; what is done as a whole comes last.
  const moveOf = new Map<number, Scene['moves'][number]>();
  for (const [index, { moves }] of script.scenes.entries()) {
    const made = moves.filter(
      ({ set, lots }) => set !== 0n && lots.some((lot) => script.lotSets[lot.index] !== 0n),
    );
    const own = tasks.filter(({ scene, move }) => scene === index && move !== null);
    for (const [place, task] of own.entries()) {
      const move = made[place];
      if (move) moveOf.set(task.index, move);
    }
  }
  const sceneOf = (index: number | undefined) => (index === undefined ? -1 : (tasks[index]?.scene ?? -1));
  const isDone = (scene: number, order: readonly number[]) =>
    order.filter((one) => sceneOf(one) === scene).length === whole.get(scene);

  const scenesOf = (order: readonly number[]): readonly Scene[] => {
    const runs: { scene: number; moves: Scene['moves'][number][]; whole: boolean }[] = [];
    for (const [place, index] of order.entries()) {
      const scene = sceneOf(index);
      if (runs.at(-1)?.scene !== scene) runs.push({ scene, moves: [], whole: false });
      const run = runs.at(-1);
      const move = moveOf.get(index);
      if (!run) continue;
      if (move) run.moves.push(move);
      run.whole = isDone(scene, order.slice(0, place + 1));
    }
    return runs.flatMap(({ scene, moves, whole: isWhole }, place) => {
      const own = script.scenes[scene];
      const left = isWhole || place < runs.length - 1;
      return own ? [{ ...own, moves, whole: isWhole, left }] : [];
    });
  };

  return {
    nothingDone: { order: [], ledger: openLedger(script), changes: [] },
    playOn: ({ order, ledger, changes }, index) => {
      const scene = script.scenes[sceneOf(index)];
      if (!scene) throw new Error(`the guide has no task ${index}`);
      const now = copyLedger(ledger);
      const more: Change[] = [];
      const onlooker = { changed: (change: Change) => more.push(change), stepDone: () => {} };
      if (sceneOf(order.at(-1)) !== sceneOf(index)) begin(scene, now);
      const move = moveOf.get(index);
      const all = [...order, index];
      if (move) makeMove(scene, move, all.length, now, onlooker);
      if (isDone(sceneOf(index), all)) finish(scene, now, onlooker);
      return { order: all, ledger: now, changes: [...changes, ...more] };
    },
    faultsOf: ({ order, ledger, changes }) => {
      const seen = copyLedger(ledger);
      const scenes = scenesOf(order);
      close(scenes, seen, order.length === tasks.length);
      judgeFixings(changes, seen, scenes);
      return seen.faults.map(({ fault }) => fault);
    },
    faultsOfOrder: (order) => {
      const scenes = scenesOf(order);
      const changes: Change[] = [];
      const onlooker = { changed: (change: Change) => changes.push(change), stepDone: () => {} };
      const ledger = play(script, onlooker, scenes, order.length === tasks.length);
      judgeFixings(changes, ledger, scenes);
      return ledger.faults.map(({ fault }) => fault);
    },
  };
}

/** What a fault says, apart from places in a file. */
function told(fault: Fault): string {
  const { at: _, action, step, ...rest } = fault;
  const words = Object.values(rest).filter((value) => typeof value === 'string');
  return [step?.id ?? '', action ? `${action.verb} ${action.target.value}` : '', ...words].join(' ');
}

/** Every how many players are held against the checker from the beginning for each choice; the others where they stand. */
const FROM_THE_BEGINNING = 25;

describe.each(sampleOf(workspace.found.guides, 2))('%s', async (path) => {
  const { value } = await inspectGuide(path, workspace);
  if (!value) throw new Error(`${path} cannot be read`);
  const { guide, job } = value;
  const data = published(guide, job);
  const plans = sampleOf(job.plans, 2).map(({ index }) => index);

  const opened = (plan: number): Game => {
    const session = openSession(data, plan);
    return { ...session, checks: checker(guide, job, plan, session.tasks) };
  };

  it.each(plans)('plan %i: whoever follows the guide ends with nothing wrong', (plan) => {
    const { tasks, judge, checks } = opened(plan);
    const steps = new Set(tasks.map(({ step }) => step).filter((step) => step !== null));
    expect([...steps]).toEqual(job.plans[plan]?.steps.map(({ id }) => id));
    const done: number[] = [];
    for (const { index } of tasks) {
      expect(judge(done, index)).toEqual({ kind: 'done', later: false });
      done.push(index);
    }
    expect(checks.faultsOfOrder(done)).toEqual([]);
  });

  it.each(plans)('plan %i: any order that the precedence of its steps allows is accepted', (plan) => {
    const { tasks, judge, checks } = opened(plan);
    const steps = job.plans[plan]?.steps ?? [];
    for (let seed = 1; seed <= samples(1, 100); seed += 1) {
      const order = linearOrder(steps, chance(seed));
      // A proof comes when all that stands before it in the guide is done.
      const rank = ({ step, index }: Task): number =>
        step === null
          ? Math.max(0, ...tasks.slice(0, index).flatMap((one) => (one.step ? [rank(one)] : [])))
          : order.indexOf(step);
      const inOrder = [...tasks].sort((a, b) => rank(a) - rank(b) || a.index - b.index);
      const done: number[] = [];
      for (const { index } of inOrder) {
        expect(judge(done, index).kind).toBe('done');
        done.push(index);
      }
      expect(checks.faultsOfOrder(done)).toEqual([]);
    }
  });

  it.each(long ? plans : plans.slice(0, 1))(
    'plan %i: a player by chance is told what the checker tells of the same order, and comes to a sound end',
    (plan) => {
      const game = opened(plan);
      for (let player = 1; player <= samples(1, 1000); player += 1)
        playByChance(game, chance(player), player % FROM_THE_BEGINNING === 1);
    },
    long ? 3_600_000 : 120_000,
  );
});

type Game = Pick<Session, 'tasks' | 'judge'> & { readonly checks: Checker };

function playByChance(
  { tasks, judge, checks }: Game,
  next: (below: number) => number,
  fromBeginning: boolean,
): void {
  const left = tasks.map(({ index }) => index);
  const done: number[] = [];
  let stand = checks.nothingDone;
  while (left.length > 0) {
    const place = next(left.length);
    const index = left[place] ?? 0;
    const after = checks.playOn(stand, index);
    const faults = checks.faultsOf(after).map(told).sort();
    const verdict = judge(done, index);
    const refused = verdict.kind === 'refused' ? verdict.faults.map(told) : [];
    expect(refused.sort()).toEqual(faults);
    if (fromBeginning) {
      expect(checks.faultsOfOrder(after.order).map(told).sort()).toEqual(faults);
      // What bars the rest does so in the order of the guide at least.
      if (verdict.kind === 'bars')
        expect(checks.faultsOfOrder([...after.order, ...left.filter((one) => one !== index)])).not.toEqual(
          [],
        );
    }
    if (verdict.kind !== 'done') continue;
    done.push(index);
    left.splice(place, 1);
    stand = after;
  }
  expect(checks.faultsOf(stand)).toEqual([]);
}

/** Steps in an order by chance in which each comes after those that it must come after. */
function linearOrder(
  steps: readonly Pick<PlannedStep, 'id' | 'after'>[],
  next: (below: number) => number,
): readonly string[] {
  const order: string[] = [];
  while (order.length < steps.length) {
    const free = steps.filter(
      ({ id, after }) => !order.includes(id) && after.every(({ step }) => order.includes(step)),
    );
    const one = free[next(free.length)];
    if (!one) throw new Error('the precedence goes in a circle');
    order.push(one.id);
  }
  return order;
}
