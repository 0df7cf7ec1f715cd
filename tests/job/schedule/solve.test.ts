import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Activity, handsOf, type ToolInUse, whenAllDone } from '../../../src/job/schedule/activity.ts';
import { assignHands } from '../../../src/job/schedule/hands.ts';
import { listSchedule } from '../../../src/job/schedule/list-schedule.ts';
import { solve } from '../../../src/job/schedule/solve.ts';
import { runs } from '../../samples.ts';

/** The tools of the random activities: one lever, and two saws. */
const shop: readonly ToolInUse[] = [
  { id: 'lever', atHand: 1 },
  { id: 'saw', atHand: 2 },
];

/** Random activities with links backwards, waits on some links, up to three people, and tools that are shared. */
function activities(most: number): fc.Arbitrary<readonly Activity[]> {
  const one = fc.record({
    duration: fc.integer({ min: 0, max: 5 }),
    people: fc.integer({ min: 1, max: 3 }),
    tools: fc.subarray([...shop]),
    wait: fc.oneof({ weight: 3, arbitrary: fc.constant(0) }, fc.integer({ min: 1, max: 6 })),
    links: fc.array(fc.tuple(fc.nat(), fc.boolean()), { maxLength: 3 }),
  });
  return fc.array(one, { minLength: 1, maxLength: most }).map((all) =>
    all.map(({ links, tools, ...activity }, index) => ({
      ...activity,
      tools: activity.duration > 0 ? tools : [],
      after: links.flatMap(([number, held]) => {
        const before = index === 0 ? undefined : number % index;
        return before === undefined ? [] : [{ index: before, lag: held ? (all[before]?.wait ?? 0) : 0 }];
      }),
    })),
  );
}

const crews = fc.integer({ min: 1, max: 3 });

describe('any schedule', () => {
  test('keeps what must come first, with its waits', () => {
    fc.assert(
      fc.property(activities(14), crews, (all, crew) => {
        const { starts } = solve(all, crew);
        all.forEach(({ after }, index) => {
          for (const link of after) {
            const free = (starts[link.index] ?? 0) + (all[link.index]?.duration ?? 0) + link.lag;
            expect(starts[index]).toBeGreaterThanOrEqual(free);
          }
        });
      }),
    );
  });

  test('never asks for more people or tools than there are, and gives each task its own', () => {
    fc.assert(
      fc.property(activities(14), crews, (all, crew) => {
        const { starts } = solve(all, crew);
        const running = (moment: number) =>
          all.flatMap((one, index) => {
            const start = starts[index] ?? 0;
            return start <= moment && moment < start + one.duration ? [index] : [];
          });
        const hands = assignHands(all, starts, crew);
        for (const moment of starts) {
          const busy = running(moment);
          const used = busy.reduce((sum, index) => sum + handsOf(all[index] ?? none, crew), 0);
          expect(used).toBeLessThanOrEqual(crew);
          for (const { id, atHand } of shop) {
            const users = busy.filter((index) => all[index]?.tools.some((tool) => tool.id === id));
            expect(users.length).toBeLessThanOrEqual(atHand);
          }
          const people = busy.flatMap((index) => hands[index] ?? []);
          expect(new Set(people).size).toBe(people.length);
        }
        all.forEach((one, index) => {
          expect(hands[index]).toHaveLength(one.duration === 0 ? 0 : one.people);
        });
      }),
    );
  });

  test('is never worse than the written order, nor than a smaller crew', () => {
    fc.assert(
      fc.property(activities(14), (all) => {
        let known: readonly number[] | undefined;
        let before = Number.POSITIVE_INFINITY;
        for (const crew of [1, 2, 3]) {
          const { starts } = solve(all, crew, known);
          const end = whenAllDone(all, starts);
          expect(end).toBeLessThanOrEqual(whenAllDone(all, listSchedule(all, crew)));
          expect(end).toBeLessThanOrEqual(before);
          known = starts;
          before = end;
        }
      }),
    );
  });

  test('is the shortest there is, of all orders and all delays', () => {
    fc.assert(
      fc.property(activities(5), crews, (all, crew) => {
        const { starts, proved } = solve(all, crew);
        expect(proved).toBe(true);
        expect(whenAllDone(all, starts)).toBe(shortest(all, crew));
      }),
      runs(60, 200),
    );
  });

  test('is the same every time', () => {
    fc.assert(
      fc.property(activities(14), crews, (all, crew) => {
        expect(solve(all, crew)).toEqual(solve(all, crew));
      }),
      runs(10, 20),
    );
  });
});

test('a search that is cut short says so, and is still no worse than the written order', () => {
  const all = Array.from({ length: 31 }, (_, index) => ({
    duration: 1000 + ((index * 617) % 389),
    people: (index % 2) + 1,
    tools: [],
    wait: (index * 31) % 7,
    after: index > 8 && index % 3 === 0 ? [{ index: index - 9, lag: 3 }] : [],
  }));
  const { starts, proved } = solve(all, 3);
  expect(proved).toBe(false);
  expect(whenAllDone(all, starts)).toBeLessThanOrEqual(whenAllDone(all, listSchedule(all, 3)));
});

const none: Activity = { duration: 0, people: 0, tools: [], wait: 0, after: [] };

/** Every way to start the activities, in whole units of time, tried one after the other. */
function shortest(all: readonly Activity[], crew: number): number {
  let best = all.reduce((sum, { duration, wait }) => sum + duration + wait, 0);
  const starts: number[] = [];
  const idle = () => Array.from({ length: 2 * best + 20 }, () => 0);
  const busy: number[] = idle();
  const inUse = new Map(shop.map(({ id }) => [id, idle()]));
  const place = (index: number, endSoFar: number): void => {
    const activity = all[index];
    if (!activity) {
      best = Math.min(best, endSoFar);
      return;
    }
    const first = Math.max(
      0,
      ...activity.after.map(
        (link) => (starts[link.index] ?? 0) + (all[link.index]?.duration ?? 0) + link.lag,
      ),
    );
    for (let start = first; start + activity.duration + activity.wait < best; start += 1) {
      const span = Array.from({ length: activity.duration }, (_, step) => start + step);
      const hands = handsOf(activity, crew);
      if (span.some((moment) => (busy[moment] ?? 0) + hands > crew)) continue;
      const users = (id: string, moment: number) => inUse.get(id)?.[moment] ?? 0;
      if (activity.tools.some(({ id, atHand }) => span.some((moment) => users(id, moment) >= atHand)))
        continue;
      const use = (change: number) => {
        for (const { id } of activity.tools)
          for (const moment of span) inUse.get(id)?.splice(moment, 1, users(id, moment) + change);
      };
      use(1);
      for (const moment of span) busy[moment] = (busy[moment] ?? 0) + hands;
      starts[index] = start;
      place(index + 1, Math.max(endSoFar, start + activity.duration + activity.wait));
      for (const moment of span) busy[moment] = (busy[moment] ?? 0) - hands;
      use(-1);
    }
  };
  place(0, 0);
  return best;
}
