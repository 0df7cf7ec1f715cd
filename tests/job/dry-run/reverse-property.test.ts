import fc from 'fast-check';
import { expect, it } from 'vitest';
import { computeJob } from '../../../src/job/index.ts';
import { reverseSteps } from '../../../src/job/reverse/reverse.ts';
import type { Guide } from '../../../src/model/guide.ts';
import type { Item } from '../../../src/model/item.ts';
import { runs } from '../../samples.ts';
import { condition, connector, fastener, guide, nowhere, part, type StepWords, supply } from '../builder.ts';

/**
 * Panels that lie over each other, each with screws, bolts, a plug and a hooked fastener. Undoing one by one is
 * sound where every operation can be undone by itself (Homem de Mello and Sanderson, 1990).
 */
const panels = ['cover', 'liner', 'tray'];
const items: readonly Item[] = [
  ...panels.flatMap((panel, index) => [
    part(panel, index === 0 ? { covers: 'liner' } : {}),
    fastener(`${panel}-screw`, { holds: panel, side: 'each', count: 2 }),
    fastener(`${panel}-bolt`, { holds: panel, torque: '8 N·m' }),
    fastener(`${panel}-hook`, { holds: panel, free: true }),
    connector(`${panel}-plug`, { on: panel, when: 'fog' }),
  ]),
  condition('battery-off'),
  supply('film', { temporary: true }),
];
const actions = [
  ...panels.flatMap((panel) => [
    `remove ${panel}`,
    `move-aside ${panel}`,
    `remove ${panel}-screw`,
    `loosen ${panel}-bolt`,
    `remove ${panel}-bolt`,
    `loosen ${panel}-hook`,
    `remove ${panel}-hook`,
    `disconnect ${panel}-plug`,
  ]),
  'set battery-off',
  'apply film',
];

function built(steps: readonly StepWords[]): Guide {
  return guide({ options: { fog: 'Fog lamps' }, items, steps });
}

/** Faults besides those of things that a strip-down alone leaves off. */
function faultsWhileWorking(steps: readonly StepWords[]): number {
  return computeJob(built(steps)).violations.filter(({ kind }) => kind !== 'left').length;
}

/** Keeps of some actions those that can be done in this order, spread over steps. */
function soundSteps(wishes: readonly { readonly action: string; readonly newStep: boolean }[]): StepWords[] {
  let steps: StepWords[] = [];
  for (const { action, newStep } of wishes) {
    const line = action.includes('plug') ? { do: action, where: 'fog' } : action;
    const last = newStep ? undefined : steps.at(-1);
    const earlier = last ? steps.slice(0, -1) : steps;
    const longer = [...earlier, { id: `step-${earlier.length + 1}`, do: [...(last?.do ?? []), line] }];
    if (faultsWhileWorking(longer) === 0) steps = longer;
  }
  return steps;
}

it('a strip-down that can be carried out, and its reverse, leave the vehicle as it was', {
  timeout: 240_000,
}, () => {
  const wish = fc.record({ action: fc.constantFrom(...actions), newStep: fc.boolean() });
  let longest = 0;
  fc.assert(
    fc.property(fc.array(wish, { minLength: 5, maxLength: 40 }), (wishes) => {
      const stripped = built(soundSteps(wishes));
      const [section] = stripped.sections;
      if (!section) throw new Error('a guide without a section');
      const { steps, problems } = reverseSteps({
        steps: section.steps,
        guards: [],
        items: stripped.items,
        templates: new Map(),
        words: stripped.words,
        fitted: new Set(),
        time: null,
        when: null,
        leftOut: [],
        at: nowhere,
      });
      longest = Math.max(longest, steps.length);
      const whole = { ...stripped, sections: [{ ...section, steps: [...section.steps, ...steps] }] };
      const job = computeJob(whole);
      expect(problems).toEqual([]);
      // That a part was left hanging is a warning; the vehicle is whole all the same.
      expect(job.violations.filter(({ kind }) => kind !== 'never-lifted')).toEqual([]);
      for (const { bench } of job.plans.flatMap((plan) => plan.steps.slice(-1))) {
        const { movement: _, ...lists } = bench;
        expect(Object.values(lists).flat()).toEqual([]);
      }
    }),
    runs(30, 60),
  );
  // The random orders are not all trivial.
  expect(longest).toBeGreaterThan(3);
});
