import { expect, it } from 'vitest';
import { computeJob } from '../../src/job/index.ts';
import type { Block } from '../../src/model/block.ts';
import { condition, estimate, type GuideWords, guide, prove, written } from './builder.ts';

const timed = (needs?: string): Block => ({ ...prove(needs), time: written(estimate(10, 10, 10)) }) as Block;
const job = (proof: Block): GuideWords => ({
  items: [condition('cured', { stays: true })],
  sections: [
    {
      id: 'work',
      steps: [
        { id: 'seal', time: [5, 5, 5], wait: 60, do: ['set cured'] },
        { id: 'tidy', time: [5, 5, 5], do: [] },
      ],
    },
    { id: 'proof', intro: [proof], steps: [] },
  ],
});

it('a proof takes its time, after the work and what it waits for, and has no number', () => {
  const [plan] = computeJob(guide(job(timed('cured')))).plans;
  expect(plan?.time.job.likely).toBe(20);
  expect(plan?.steps.map(({ id }) => id)).toEqual(['seal', 'tidy']);
  const tasks = plan?.schedules[0]?.tasks.map(({ title, number, start, finish }) => [
    title,
    number,
    start,
    finish,
  ]);
  // The wait is filled with what does not need the cure; the proof needs it.
  expect(tasks).toEqual([
    ['seal', 1, 0, 5],
    ['tidy', 2, 5, 10],
    ['Prove: Proof', null, 65, 75],
  ]);
});

it('a proof without a time takes none', () => {
  const [plan] = computeJob(guide(job(prove('cured')))).plans;
  expect(plan?.time.job.likely).toBe(10);
  expect(plan?.schedules[0]?.tasks.length).toBe(2);
});
