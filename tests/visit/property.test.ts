import { describe, expect, it } from 'vitest';
import { placedInStep, stepsOf } from '../../src/job/actions/walk.ts';
import type { Block } from '../../src/model/block.ts';
import type { Guide, Step } from '../../src/model/guide.ts';
import type { Prose } from '../../src/model/prose.ts';
import type { VisitTimes } from '../../src/model/visit.ts';
import { memoryFiles } from '../../src/shop/index.ts';
import { samples } from '../samples.ts';
import { randomWorkspace } from './random-guides.ts';
import { type Bookable, bookable } from './request.ts';

const names = ['lamp', 'mirror', 'rack'];

/** The actions of a step, by verb and by the last part of the target's id. */
function actionsIn(step: Step): readonly string[] {
  return placedInStep(step).flatMap(({ node, block }) =>
    node.type === 'action' && block.type !== 'refit-note'
      ? [`${node.verb} ${node.target.value.replace(/^.*_/, '')}`]
      : [],
  );
}

function text(prose: Prose): string {
  return prose
    .map((node) => (node.type === 'text' ? node.value : 'children' in node ? text(node.children) : ''))
    .join('');
}

function warningsIn(blocks: readonly Block[]): readonly string[] {
  return blocks.flatMap((block) => (block.type === 'message' ? [text(block.hazard)] : []));
}

/** Where a step of a guide is in its visit: under its own name, or, done once for several, under its bare one. */
function inVisit(step: Step, guide: Guide, visit: Guide): readonly Step[] {
  const all = stepsOf(visit);
  return all.filter(
    ({ id }) =>
      id === `${guide.id}_${step.id}` ||
      (id === step.id && visit.visit?.steps.get(id)?.guides.includes(guide.id)),
  );
}

function judge(shop: Bookable, wanted: readonly string[]): void {
  const { visit, findings } = shop.plan(wanted);
  expect(findings.map(({ message }) => message)).toEqual([]);
  if (!visit) throw new Error('no plan');
  const { guide, job } = visit;
  // It passes the dry run for every build.
  expect(job.violations).toEqual([]);
  expect(job.plans.length).toBeGreaterThan(0);
  const order = stepsOf(guide).map(({ id }) => id);
  expect(new Set(order).size).toBe(order.length);
  const counted = new Map<string, number>();
  for (const name of wanted) {
    const own = shop.guide(name).guide;
    let last = -1;
    for (const section of own.sections) {
      for (const step of section.steps) {
        // Each step once, alone or shared, with all that it does and warns of.
        const [found, more] = inVisit(step, own, guide);
        expect(more, step.id).toBeUndefined();
        if (!found) throw new Error(`${name}: ${step.id} is lost`);
        counted.set(found.id, (counted.get(found.id) ?? 0) + 1);
        expect(actionsIn(found)).toEqual(actionsIn(step));
        const around = guide.sections.find(({ steps }) => steps.includes(found));
        const warned = [...warningsIn(around?.intro ?? []), ...warningsIn(found.blocks)];
        expect(warned).toEqual(
          expect.arrayContaining([...warningsIn(section.intro), ...warningsIn(step.blocks)]),
        );
        // The author's order, but for what is marked free.
        const place = order.indexOf(found.id);
        if (!step.anyOrder) {
          expect(place, `${name}: ${step.id}`).toBeGreaterThan(last);
          last = place;
        }
        for (const { value } of step.after) {
          const before = stepsOf(own).find(({ id }) => id === value);
          const [first] = before ? inVisit(before, own, guide) : [];
          expect(order.indexOf(first?.id ?? '')).toBeLessThan(place);
        }
      }
    }
  }
  // Nothing is there that no guide has, and a step is counted once for each guide that it says it is for.
  expect([...counted.keys()].sort()).toEqual([...order].sort());
  for (const [id, count] of counted) expect(guide.visit?.steps.get(id)?.guides.length, id).toBe(count);
  // Never longer than one after the other.
  for (const { together, apart } of guide.visit?.savings ?? []) {
    const sum = (of: (times: VisitTimes) => number) => apart.reduce((total, one) => total + of(one), 0);
    expect(together.handsOn).toBeLessThan(sum(({ handsOn }) => handsOn) + 0.01);
    for (const [index, { minutes }] of together.elapsed.entries())
      expect(minutes).toBeLessThan(sum(({ elapsed }) => elapsed[index]?.minutes ?? 0) + 0.5);
  }
  // However they are named; of three in the long set.
  if (wanted.length > samples(2, 3)) return;
  const again = shop.plan([...wanted].reverse()).visit;
  expect(again?.job.fingerprint).toBe(job.fingerprint);
}

describe('random guides on one vehicle', () => {
  it.each(Array.from({ length: samples(2, 150) }, (_, index) => index + 1))(
    'make one sound job, seed %i',
    async (seed) => {
      const shop = await bookable(memoryFiles(randomWorkspace(seed, names)), names);
      expect(
        shop.findings.filter(({ severity }) => severity === 'error').map(({ message }) => message),
      ).toEqual([]);
      for (const wanted of [['lamp', 'mirror'], ['lamp'], names]) judge(shop, wanted);
    },
  );
});
