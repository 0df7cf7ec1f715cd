import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { judgeFixings } from '../../src/job/dry-run/judge-fixings.ts';
import type { Fault } from '../../src/job/dry-run/ledger.ts';
import { type Change, play } from '../../src/job/dry-run/play.ts';
import { type Scene, type Script, scriptOf } from '../../src/job/dry-run/script.ts';
import type { Guide } from '../../src/model/guide.ts';
import type { Job } from '../../src/model/job.ts';
import { firstBuilds } from '../../src/pages/rehearsal/rehearsal.ts';
import { diskFiles } from '../../src/shop/index.ts';
import { inspectGuide } from '../../src/shop/inspect-guide.ts';
import { openWorkspace } from '../../src/shop/open-workspace.ts';
import { noStore } from '../../src/store/store.ts';
import type { Session, Task } from '../../templates/scripts/rehearse/session.ts';
import { long, sampleOf, samples } from '../samples.ts';
import { bundled, published } from './bundle.ts';

const workspace = await openWorkspace(diskFiles(resolve(import.meta.dirname, '../../guides')), noStore, null);
const { openSession } = await bundled();

/** Chance that is the same in each run: a linear congruential generator (Numerical Recipes, 7.1). */
function chance(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return Math.floor((state / 4294967296) * below);
  };
}

/** The checker itself, on the guide as it was read, held against any order of its work. */
function checker(guide: Guide, job: Job, plan: number, tasks: readonly Task[]) {
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
  return (order: readonly number[]): readonly Fault[] => {
    const isAll = order.length === tasks.length;
    const done = new Map<number, number>();
    const scenes: Scene[] = [];
    let last = -1;
    for (const index of order) {
      const task = tasks[index];
      const own = task && script.scenes[task.scene];
      if (!task || !own) throw new Error(`the guide has no task ${index}`);
      const { scene } = task;
      done.set(scene, (done.get(scene) ?? 0) + 1);
      const move = moveOf.get(index);
      const before = last === scene ? (scenes.pop()?.moves ?? []) : [];
      const isWhole = done.get(scene) === whole.get(scene);
      scenes.push({ ...own, moves: move ? [...before, move] : before, whole: isWhole, left: true });
      last = scene;
    }
    const open = scenes.pop();
    if (open) scenes.push({ ...open, left: open.whole });
    const changes: Change[] = [];
    const ledger = play(
      script,
      { changed: (change) => changes.push(change), stepDone: () => {} },
      scenes,
      isAll,
    );
    judgeFixings(changes, ledger, scenes);
    return ledger.faults.map(({ fault }) => fault);
  };
}

/** What a fault says, apart from places in a file. */
function told(fault: Fault): string {
  const { at: _, action, step, ...rest } = fault;
  const words = Object.values(rest).filter((value) => typeof value === 'string');
  return [step?.id ?? '', action ? `${action.verb} ${action.target.value}` : '', ...words].join(' ');
}

describe.each(sampleOf(workspace.found.guides, 2))('%s', async (path) => {
  const { value } = await inspectGuide(path, workspace);
  if (!value) throw new Error(`${path} cannot be read`);
  const { guide, job } = value;
  const data = published(guide, job);

  it.each(sampleOf(job.plans, 2).map(({ index }) => index))(
    'plan %i: whoever follows the guide ends with nothing wrong',
    (plan) => {
      const { tasks, judge } = openSession(data, plan);
      const steps = new Set(tasks.map(({ step }) => step).filter((step) => step !== null));
      expect([...steps]).toEqual(job.plans[plan]?.steps.map(({ id }) => id));
      const done: number[] = [];
      for (const { index } of tasks) {
        expect(judge(done, index)).toEqual({ kind: 'done', later: false });
        done.push(index);
      }
      expect(checker(guide, job, plan, tasks)(done)).toEqual([]);
    },
  );

  it(
    'a player by chance is told what the checker tells of the same order, and comes to a sound end',
    () => {
      const { plans } = job;
      const games = plans.map(({ index }) => {
        const session = openSession(data, index);
        return { ...session, faultsOf: checker(guide, job, index, session.tasks) };
      });
      for (let player = 1; player <= samples(1, 1000); player += 1) {
        const game = games[player % games.length];
        if (game) playByChance(game, chance(player));
      }
    },
    long ? 10_800_000 : 120_000,
  );
});

type Game = Pick<Session, 'tasks' | 'judge'> & { readonly faultsOf: ReturnType<typeof checker> };

function playByChance({ tasks, judge, faultsOf }: Game, next: (below: number) => number): void {
  const inOrder = tasks.map(({ index }) => index);
  const done: number[] = [];
  while (done.length < tasks.length) {
    const left = inOrder.filter((index) => !done.includes(index));
    const index = left[next(left.length)] ?? 0;
    const order = [...done, index];
    const verdict = judge(done, index);
    const refused = verdict.kind === 'refused' ? verdict.faults.map(told) : [];
    expect(refused.sort()).toEqual(faultsOf(order).map(told).sort());
    if (verdict.kind === 'done') done.push(index);
    // What bars the rest does so in the order of the guide at least.
    if (verdict.kind === 'bars')
      expect(faultsOf([...order, ...left.filter((one) => one !== index)])).not.toEqual([]);
  }
  expect(faultsOf(done)).toEqual([]);
}
