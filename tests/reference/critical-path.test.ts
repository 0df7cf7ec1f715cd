import { describe, expect, test } from 'vitest';
import { type Activity, whenAllDone } from '../../src/job/schedule/activity.ts';
import { chainOf } from '../../src/job/schedule/chain.ts';
import { solve } from '../../src/job/schedule/solve.ts';
import { eventNet, net } from '../job/schedule/nets.ts';

function end(activities: readonly Activity[], crew: number): number {
  const { starts, proved } = solve(activities, crew);
  expect(proved).toBe(true);
  return whenAllDone(activities, starts);
}

const unlimited = (activities: readonly Activity[]) => end(activities, activities.length);

/** How much longer an activity may take by itself without the job taking longer: its total float. */
function slack(activities: readonly Activity[], index: number): number {
  const before = unlimited(activities);
  let longer = 0;
  while (
    unlimited(
      activities.map((one, place) =>
        place === index ? { ...one, duration: one.duration + longer + 1 } : one,
      ),
    ) === before
  )
    longer += 1;
  return longer;
}

const arrows1 = ['1-2:7', '1-3:10', '2-4:6', '3-4:5', '3-5:4', '4-5:3', '5-6:2'];
const arrows2 = [
  ...['1-2:8', '1-3:10', '1-4:9', '2-5:6', '2-6:4', '3-5:5', '4-5:0'],
  ...['4-7:7', '5-7:12', '5-8:15', '6-9:18', '7-8:4', '8-9:7'],
];
const net1 = eventNet(...arrows1);
const net2 = eventNet(...arrows2);
// The paper mill with PERT means (from memory), the car repair of "Excursions in Modern Mathematics", the
// house (durations solutioninn 14060241; its last two and its links from memory), Graham's nine tasks.
const paperMill = net('A2', 'B3', 'C2 A', 'D4 A,B', 'E4 C', 'F3 C', 'G5 D,E', 'H2 F,G');
const carRepair = net('A4', 'B5', 'C7 A', 'D3');
const house = net(
  ...['A2', 'B4 A', 'C10 B', 'D6 C', 'E4 C', 'F5 E', 'G7 D', 'H9 E,G', 'I7 C', 'J8 F,I', 'K4 J', 'L5 J'],
  ...['M2 H', 'N6 K,L'],
);
const graham = net(
  ...['T1:3', 'T2:2', 'T3:2', 'T4:2', 'T5:4 T4', 'T6:4 T4', 'T7:4 T4', 'T8:4 T4', 'T9:9 T1'],
);

describe('critical path (both nets: scribd 47113515)', () => {
  test('net 1: 20 by 1-3-4-5-6', () => {
    expect(unlimited(net1)).toBe(20);
    const { starts } = solve(net1, net1.length);
    expect(chainOf(net1, starts).map((index) => arrows1[index])).toEqual([
      '1-3:10',
      '3-4:5',
      '4-5:3',
      '5-6:2',
    ]);
    expect(net1.map((_, index) => slack(net1, index))).toEqual([2, 0, 2, 0, 4, 0, 0]);
  });

  test('net 2: 38 by 1-3-5-7-8-9', () => {
    expect(unlimited(net2)).toBe(38);
    const { starts } = solve(net2, net2.length);
    expect(chainOf(net2, starts).map((index) => arrows2[index])).toEqual([
      '1-3:10',
      '3-5:5',
      '5-7:12',
      '7-8:4',
      '8-9:7',
    ]);
    expect(net2.map((_, index) => slack(net2, index))).toEqual([1, 0, 6, 1, 8, 0, 6, 11, 0, 1, 8, 0, 0]);
  });

  test('the house: 44 by A-B-C-E-F-J-L-N', () => {
    expect(unlimited(house)).toBe(44);
    const { starts } = solve(house, house.length);
    expect(chainOf(house, starts)).toEqual([0, 1, 2, 4, 5, 9, 11, 13]);
  });
});

describe('optima for a crew (proved with OR-tools CP-SAT)', () => {
  test.each([
    ['car repair', carRepair, [19, 11, 11]],
    ['net 1', net1, [37, 20]],
    ['net 2', net2, [105, 53, 38]],
    ['paper mill', paperMill, [25, 15]],
    ['Graham', graham, [34, 17, 12]],
    // Five independent jobs of 4 to 8 (the Wikipedia article on list scheduling has the list lengths 18, 13).
    ['independent jobs', net('A4', 'B5', 'C6', 'D7', 'E8'), [30, 15, 11]],
  ] as const)('%s', (_, activities, ends) => {
    expect(ends.map((_, index) => end(activities, index + 1))).toEqual(ends);
  });
});

describe('the anomalies of Graham (1969; lengths from the Wikipedia article on list scheduling)', () => {
  const shorter = graham.map((one) => ({ ...one, duration: one.duration - 1 }));
  const looser = graham.map((one, index) => (index === 4 || index === 5 ? { ...one, after: [] } : one));

  test('list scheduling gets slower with more workers, shorter tasks or fewer links', () => {
    expect(listLength(graham, 3)).toBe(12);
    expect(listLength(graham, 4)).toBe(15);
    expect(listLength(shorter, 3)).toBe(13);
    expect(listLength(looser, 3)).toBe(16);
  });

  test('a schedule of ours does not', () => {
    expect(end(graham, 3)).toBe(12);
    expect(end(graham, 4)).toBeLessThanOrEqual(12);
    expect(end(shorter, 3)).toBeLessThanOrEqual(12);
    expect(end(looser, 3)).toBeLessThanOrEqual(12);
  });
});

/** Graham's rule: whoever is free takes the first task of the list that can begin. */
function listLength(activities: readonly Activity[], workers: number): number {
  const finish = new Map<number, number>();
  for (let now = 0; now < 1000; now += 1) {
    const done = (index: number) => (finish.get(index) ?? Number.POSITIVE_INFINITY) <= now;
    activities.forEach(({ duration, after }, index) => {
      const busy = [...finish.values()].filter((end) => end > now).length;
      if (busy < workers && !finish.has(index) && after.every((link) => done(link.index)))
        finish.set(index, now + duration);
    });
  }
  return Math.max(...finish.values());
}
