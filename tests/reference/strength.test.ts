import { describe, expect, test } from 'vitest';
import { proofLoad, strengthOf } from '../../src/trade/strength.ts';
import { stressArea } from '../../src/trade/thread.ts';
import { clampLoad, judgeTorque } from '../../src/trade/torque.ts';
import { convert, quantityOf } from '../../src/units/format.ts';
import { type Base, base } from '../../src/units/quantity.ts';
import { thread } from '../trade/read.ts';

function proof(size: string, grade: string): number {
  const strength = strengthOf(thread(size), grade);
  if (!strength) throw new Error(`${grade} is not known`);
  return proofLoad(thread(size), strength);
}

const stated = (k: number) => ({ words: k.toFixed(2), k });

const within = (found: number, printed: number, share: number): void =>
  expect(Math.abs(found / printed - 1), `${found} against ${printed}`).toBeLessThanOrEqual(share);

/*
 * ISO 898-1 loads of coarse threads as printed by optimas.com and slsbearings.com (stress area, proof and
 * ultimate load in N by class). The tables are cut to three figures: 0.7 % allows
 * for that (M6 8.8 is 11 672 N and printed as 11 600).
 */
describe('coarse threads: stress area, proof load and ultimate load', () => {
  test.each([
    ['M4', 8.78, [5100, 7290, 8520], [7020, 9130, 10700]],
    ['M5', 14.2, [8230, 11800, 13800], [11350, 14800, 17300]],
    ['M6', 20.1, [11600, 16700, 19500], [16100, 20900, 24500]],
    ['M8', 36.6, [21200, 30400, 35500], [29200, 38100, 44600]],
    ['M10', 58, [33700, 48100, 56300], [46400, 60300, 70800]],
    ['M12', 84.3, [48900, 70000, 81800], [67400, 87700, 103000]],
    ['M14', 115, [66700, 95500, 112000], [92000, 120000, 140000]],
    ['M16', 157, [91000, 130000, 152000], [125000, 163000, 192000]],
  ])('%s', (size, area, proofs, ultimates) => {
    within(stressArea(thread(size)), area, 0.007);
    ['8.8', '10.9', '12.9'].forEach((grade, index) => {
      within(proof(size, grade), proofs[index] ?? 0, 0.007);
      within(
        (strengthOf(thread(size), grade)?.tensile ?? 0) * stressArea(thread(size)),
        ultimates[index] ?? 0,
        0.006,
      );
    });
  });

  test('usefastener.com prints 91 130 N for M4 10.9, a slip for 9 130 N', () => {
    const ultimate = (strengthOf(thread('M4'), '10.9')?.tensile ?? 0) * stressArea(thread('M4'));
    within(ultimate, 9130, 0.007);
    expect(ultimate).toBeLessThan(91130 / 5);
  });
});

// The formula of the stress area, π/4·(d − 0.9382·P)², worked to two places.
test.each([
  ['M4', 8.78],
  ['M5', 14.18],
  ['M6', 20.12],
  ['M8', 36.61],
  ['M10', 57.99],
  ['M12', 84.27],
  ['M14', 115.44],
  ['M16', 156.67],
])('%s has %d mm² of stress area', (size, area) => {
  expect(stressArea(thread(size))).toBeCloseTo(area, 2);
});

// ISO 898-1 fine threads, 8.8 as printed (from memory, so within 0.7 % of the computed loads that stand beside it).
test.each([
  ['M8x1', 39.17, [22716, 32508, 37992], 22700],
  ['M10x1.25', 61.2, [35495, 50794, 59362], 35500],
  ['M12x1.5', 88.13, [51112, 73144, 85482], 51100],
  ['M14x1.5', 124.55, [72236, 103372, 120809], 72500],
  ['M16x1.5', 167.25, [97003, 138815, 162230], 96900],
] as const)('fine thread %s', (size, area, computed, printed) => {
  expect(stressArea(thread(size))).toBeCloseTo(area, 1);
  for (const [index, grade] of ['8.8', '10.9', '12.9'].entries()) {
    within(proof(size, grade), computed[index] ?? 0, 0.0005);
  }
  within(proof(size, '8.8'), printed, 0.007);
});

/*
 * T = K·D·F at 75 % of proof load: engineersedge.com, torque_vs_tension_bolts_13355. Clamp in lbf; torque in lbf·in
 * below 3/8 in and in lbf·ft from there, for K = 0.15, 0.18 and 0.20. Proof stresses: SAE J429 (china-bolts.com).
 */
describe('inch bolts: proof load and torque table', () => {
  const table: readonly (readonly [
    string,
    'lbf·in' | 'lbf·ft',
    number,
    readonly number[],
    number,
    readonly number[],
  ])[] = [
    ['1/4-20', 'lbf·in', 2029, [76, 91, 101], 2864, [107, 143]],
    ['1/4-28', 'lbf·in', 2319, [87, 104, 116], 3274, [123, 164]],
    ['5/16-18', 'lbf·in', 3342, [157, 188, 209], 4719, [221, 295]],
    ['3/8-16', 'lbf·ft', 4940, [23, 28, 31], 6974, [33, 44]],
    ['3/8-24', 'lbf·ft', 5599, [26, 31, 35], 7905, [37, 49]],
    ['7/16-14', 'lbf·ft', 6777, [37, 44, 49], 9568, [52, 70]],
    ['1/2-13', 'lbf·ft', 9046, [57, 68, 75], 12771, [80, 106]],
    ['5/8-11', 'lbf·ft', 14408, [113, 135, 150], 20340, [159, 212]],
    ['3/4-10', 'lbf·ft', 21322, [200, 240, 267], 30101, [282, 376]],
  ];

  test.each(table)('%s', (size, unit, clamp5, torques5, clamp8, torques8) => {
    const rows = [
      { grade: '5', clamp: clamp5, torques: torques5, factors: [0.15, 0.18, 0.2] },
      { grade: '8', clamp: clamp8, torques: torques8, factors: [0.15, 0.2] },
    ];
    for (const { grade, clamp, torques, factors } of rows) {
      within(0.75 * convert(quantityOf('force', proof(size, grade), 'N'), 'lbf'), clamp, 0.001);
      factors.forEach((k, index) => {
        const printed = torques[index] ?? 0;
        const loadOf = (torque: number): Base<'force'> =>
          clampLoad(quantityOf('torque', torque, unit).base, thread(size), { kind: 'nut-factor', k });
        // The printed torque is rounded to one, so the clamp lies between those of half a unit less and more.
        const newtons = quantityOf('force', clamp, 'lbf').base;
        expect(loadOf(printed - 0.51)).toBeLessThan(newtons);
        expect(loadOf(printed + 0.51)).toBeGreaterThan(newtons);
      });
    }
  });

  test('at its own torque the table loads the bolt to 75 % of proof', () => {
    const found = judgeTorque(quantityOf('torque', 75, 'lbf·ft'), thread('1/2-13'), '5');
    expect(found).toMatchObject({ verdict: 'plausible', share: expect.closeTo(0.75, 2) });
  });
});

/*
 * SAE J429 by size: grade 2 from 1/4 to 3/4 in 55 ksi proof and 74 ksi tensile, above that 33 ksi; grade 5 to 1 in 85
 * and 120 ksi, above that 74 and 105; grade 8 120 and 150 (china-bolts.com, web.mst.edu/jthomas). The 60 ksi tensile
 * of a grade 2 above 3/4 in is from memory and not tested.
 */
test.each([
  ['1/4-20', '2', 55, 74],
  ['3/4-10', '2', 55, 74],
  ['7/8-9', '2', 33, null],
  ['1-8', '2', 33, null],
  ['1-8', '5', 85, 120],
  ['1-8', '8', 120, 150],
])('SAE J429: %s grade %s has %d ksi proof', (size, grade, proofKsi, tensileKsi) => {
  const found = strengthOf(thread(size), grade);
  within((found?.proof ?? 0) / 6.8947572931684, proofKsi, 1e-9);
  if (tensileKsi !== null) within((found?.tensile ?? 0) / 6.8947572931684, tensileKsi, 1e-9);
});

/*
 * Metric torques at 75 % of proof load (computed from T = K·D·F with ISO 898-1 proof stresses), N·m at K = 0.20 and
 * 0.15: ours finds the same share of proof load.
 */
test.each([
  ['M5', '8.8', 6.2, 4.6],
  ['M6', '8.8', 10.5, 7.9],
  ['M8', '8.8', 25.5, 19.1],
  ['M10', '8.8', 50.5, 37.8],
  ['M12', '8.8', 88, 66],
  ['M16', '8.8', 218, 164],
  ['M6', '10.9', 15, 11.3],
  ['M8', '10.9', 36.5, 27.3],
  ['M10', '10.9', 72.2, 54.1],
  ['M12', '10.9', 125.9, 94.4],
])('%s %s: 75 %% of proof at %d N·m dry and %d oiled', (size, grade, dry, oiled) => {
  const share = (torque: number, k: number) =>
    judgeTorque(quantityOf('torque', torque, 'N·m'), thread(size), grade, stated(k))?.share ?? 0;
  expect(share(dry, 0.2)).toBeCloseTo(0.75, 2);
  expect(share(oiled, 0.15)).toBeCloseTo(0.75, 2);
});

/*
 * VDI 2230 assembly torques of coarse bolts at µ 0.12 (computed with its formula; they match the 2003 table from
 * memory): a torque that a table of that standard gives is never an error here.
 */
test.each([
  ['M5', 5.8, 8.6, 10],
  ['M6', 10.1, 14.9, 17.4],
  ['M8', 24.6, 36.1, 42.2],
  ['M10', 48.5, 71.2, 83.3],
  ['M12', 83.6, 123, 144],
  ['M14', 134, 196, 230],
  ['M16', 206, 302, 354],
])('%s takes its VDI 2230 torques', (size, ...torques) => {
  ['8.8', '10.9', '12.9'].forEach((grade, index) => {
    const torque = quantityOf('torque', Number(torques[index]), 'N·m');
    expect(judgeTorque(torque, thread(size), grade)?.verdict).toBe('plausible');
    const load = clampLoad(torque.base, thread(size), { kind: 'coefficient', mu: 0.12 });
    const yieldStress = [640, 940, 1100][index] ?? 0;
    // 90 % of Rp0.2 under tension and torsion together leaves some 80 % of it as clamp.
    expect(load / stressArea(thread(size)) / yieldStress).toBeGreaterThan(0.72);
    expect(load / stressArea(thread(size)) / yieldStress).toBeLessThan(0.9);
  });
});

// Shigley, Mechanical Engineering Design, example 8-3: 3/4-16, 25 kip; the torque follows from K = 0.2 (computed).
test('Shigley example 8-3', () => {
  const area = stressArea(thread('3/4-16')) / 25.4 ** 2;
  expect(area).toBeCloseTo(0.373, 3);
  within(25 / area, 67.02, 0.002);
  const torque = quantityOf('torque', 3750, 'lbf·in');
  const load = clampLoad(torque.base, thread('3/4-16'), { kind: 'nut-factor', k: 0.2 });
  expect(convert(quantityOf('force', load, 'N'), 'lbf')).toBeCloseTo(25000, 6);
});

/*
 * "Lubricated" is K = 0.18 in Shigley table 8-15 and 0.15 in other tables (engineersedge.com, studylib 26058660):
 * a fifth of the load hangs on which is meant, so every judgement states what it assumes.
 */
test('sources disagree on K, and the result says which was used', () => {
  const torque = quantityOf('torque', 25, 'N·m');
  const shares = [0.15, 0.18].map((k) => judgeTorque(torque, thread('M8'), '8.8', stated(k)));
  expect((shares[0]?.share ?? 0) / (shares[1]?.share ?? 1)).toBeCloseTo(1.2, 6);
  expect(shares.map((one) => one?.assumption)).toEqual([
    'M8x1.25, 8.8, K = 0.15 stated',
    'M8x1.25, 8.8, K = 0.18 stated',
  ]);
});

/*
 * VDI 2230 assembly preload (kN) and torque (N·m) at 90 % of yield, classes 8.8, 10.9, 12.9: mastik.pt page 685
 * (fine threads). Ours takes a bearing diameter of 1.3·d where the table has each head's own: 3 % allows for that.
 */
// And one coarse bolt of another print (scribd 564189166): M12 8.8 at µ 0.14 holds 41.9 kN; its 93 N·m are from
// memory.
test('VDI 2230: M12 at µ 0.14', () => {
  within(clampLoad(base(93), thread('M12'), { kind: 'coefficient', mu: 0.14 }), 41900, 0.03);
});

test.each([
  ['M8x1', 0.1, [20.7, 30.4, 35.6], [22.8, 33.5, 39.2]],
  ['M8x1', 0.12, [20.2, 29.7, 34.7], [26.1, 38.3, 44.9]],
  ['M8x1', 0.14, [19.7, 28.9, 33.9], [29.2, 42.8, 50.1]],
  ['M10x1.25', 0.12, [31.6, 46.4, 54.3], [51, 75, 87]],
  ['M12x1.25', 0.12, [48, 70.5, 82.5], [90, 133, 155]],
  ['M14x1.5', 0.12, [64.8, 95.2, 111.4], [142, 209, 244]],
  ['M16x1.5', 0.12, [87.6, 128.7, 150.6], [218, 320, 374]],
])('VDI 2230: %s at µ %d', (size, mu, preloads, torques) => {
  torques.forEach((torque, index) => {
    const load = clampLoad(base(torque), thread(size), { kind: 'coefficient', mu });
    within(load, 1000 * (preloads[index] ?? 0), 0.03);
  });
});

/*
 * Torques that published tables give for plain coarse bolts must pass: strobl manual table (older VDI, µ 0.14,
 * 8.8). And those of AC 43.13-1B table 7-1, fine threads, tension nuts, lbf·in, on bolts of 125 ksi (near grade 5).
 */
describe('published torques are found plausible', () => {
  test.each([
    ['M6', 10],
    ['M8', 25],
    ['M10', 49],
    ['M12', 85],
  ])('%s 8.8 at %d N·m', (size, torque) => {
    expect(judgeTorque(quantityOf('torque', torque, 'N·m'), thread(size), '8.8')?.verdict).toBe('plausible');
  });

  // Tension nuts from and to, shear nuts from and to, and the most that a bolt in tension may ever see.
  const aircraft = [
    ['#10-32', 20, 25, 12, 15, 40],
    ['1/4-28', 50, 70, 30, 40, 100],
    ['5/16-24', 100, 140, 60, 85, 225],
    ['3/8-24', 160, 190, 95, 110, 390],
    ['7/16-20', 450, 500, 270, 300, 840],
    ['1/2-20', 480, 690, 290, 410, 1100],
    ['#10-24', 20, 25, 12, 15, 35],
    ['1/4-20', 40, 50, 25, 30, 75],
    ['5/16-18', 80, 90, 48, 55, 160],
    ['3/8-16', 160, 185, 95, 100, 275],
    ['7/16-14', 235, 255, 140, 155, 475],
    ['1/2-13', 400, 480, 240, 290, 880],
  ] as const;
  const judged = (size: string, torque: number) =>
    judgeTorque(quantityOf('torque', torque, 'lbf·in'), thread(size), '5');

  test.each(aircraft)('%s at %d to %d lbf·in', (size, least, most, shearLeast, shearMost, greatest) => {
    for (const torque of [least, most]) expect(judged(size, torque)?.verdict).toBe('plausible');
    // A nut loaded in shear is drawn up to some six tenths; no torque of the table stretches the bolt for good.
    for (const torque of [shearLeast, shearMost, greatest])
      expect(judged(size, torque)?.share).toBeLessThan(1);
    expect(shearMost / most).toBeGreaterThan(0.5);
    expect(shearMost / most).toBeLessThan(0.65);
  });
});
