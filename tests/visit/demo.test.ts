import { resolve } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { stepsOf } from '../../src/job/actions/walk.ts';
import type { Guide } from '../../src/model/guide.ts';
import { diskFiles } from '../../src/shop/files/disk-files.ts';
import { baybook, bench, repository } from '../driver.ts';
import { randomWorkspace } from './random-guides.ts';
import { type Bookable, bookable } from './request.ts';

const build = ['led', 'lining'];
let shop: Bookable;
/** The roof vent and the side awning. */
let pair: Guide;

beforeAll(async () => {
  const names = ['lamp-cradle', 'roof-vent', 'side-awning', 'swivel-seat'];
  // The demo itself is checked elsewhere.
  shop = await bookable(diskFiles(resolve(repository, 'guides')), names, false);
  pair = planned(['roof-vent', 'side-awning']);
}, 60_000);

function planned(names: readonly string[]): Guide {
  const { visit } = shop.plan(names, build);
  if (!visit) throw new Error(`no plan for ${names.join(', ')}`);
  return visit.guide;
}

/** The mean of a time by hand: (least + 4 likely + most) / 6, the PERT mean. */
function mean(guide: Guide, ids: ReadonlySet<string>): number {
  return stepsOf(guide).reduce((sum, { id, time, side }) => {
    if (!time || !ids.has(id)) return sum;
    const { least, likely, most } = time.value;
    return sum + ((least + 4 * likely + most) / 6) * (side?.value === 'each' ? 2 : 1);
  }, 0);
}

describe('the roof vent and the side awning in one visit', () => {
  it('sums what both put on the roof, within what the platform says that it may carry', () => {
    const [load, ...more] = pair.visit?.loads ?? [];
    expect(more).toEqual([]);
    expect(load?.rating).toBe('roof-load');
    const claims = load?.claims.map(({ item }) => pair.items.get(item)) ?? [];
    const kilograms = claims.map((item) => (item?.kind === 'rating' ? item.claim?.value.base : null));
    expect(kilograms).toEqual([9, 28]);
    const limit = pair.items.get('roof-load');
    expect(limit?.kind === 'rating' ? limit.limit?.value.base : null).toBe(100);
    expect(load?.silent).toEqual([]);
  });

  it('takes the hands-on time of both, less what is done once', () => {
    const [saving] = pair.visit?.savings ?? [];
    const both = ['roof-vent', 'side-awning'].map((name) => shop.guide(name).guide);
    const whole = both.map((guide) => mean(guide, new Set(stepsOf(guide).map(({ id }) => id))));
    const shared = new Set(pair.visit?.shared.map(({ step }) => step));
    const once = mean(both[0] as Guide, shared);
    expect([...shared]).toEqual([
      'intake',
      'access',
      'battery',
      'handles',
      'lining-down',
      'refit-lining-down',
      'refit-handles',
      'refit-battery',
      'refit-access',
      'refit-intake',
    ]);
    expect(saving?.apart.map(({ handsOn }) => handsOn)).toEqual(
      whole.map((minutes) => expect.closeTo(minutes, 1)),
    );
    expect(saving?.together.handsOn).toBeCloseTo((whole[0] ?? 0) + (whole[1] ?? 0) - once, 1);
    // Both cures of 24 h run together: a day and what cannot be done in it, and not two.
    expect(saving?.together.elapsed[0]?.minutes).toBeLessThan(24 * 60 + 240);
    expect(saving?.apart[0]?.elapsed[0]?.minutes).toBeGreaterThan(24 * 60);
  });

  it('brings all swarf before any sealant, and the awning into the wait of the vent’s primer or the reverse', () => {
    const order = stepsOf(pair).map(({ id }) => id);
    const dirty = ['roof-vent_saw', 'side-awning_drill-step'].map((id) => order.indexOf(id));
    const sealed = ['roof-vent_bed', 'side-awning_brackets'].map((id) => order.indexOf(id));
    expect(Math.max(...dirty)).toBeLessThan(Math.min(...sealed));
    expect(Math.min(...dirty)).toBeGreaterThan(0);
    const reasons = pair.visit?.reasons ?? [];
    expect(reasons.map(({ kind }) => kind)).toContain('fills-wait');
  });

  it('needs of each product what both need, and keeps apart what each declares itself', () => {
    const { items } = pair;
    const quantity = (id: string) => {
      const item = items.get(id);
      return item?.kind === 'supply' ? item.quantity?.value.base : undefined;
    };
    // 200 ml and 60 ml of sealant, 30 ml and 15 ml of primer: litres.
    expect(quantity('sealant')).toBeCloseTo(0.26);
    expect(quantity('primer')).toBeCloseTo(0.045);
    expect(items.get('roof-vent_tape')?.noun.label).toBe('Masking tape, 50 mm, for powered roof vent');
    expect(items.has('cured')).toBe(false);
  });

  it('leaves no build open that the visit has settled', () => {
    expect(shop.plan(['lamp-cradle'], ['led']).visit?.job.plans.length).toBeLessThan(
      shop.plan(['lamp-cradle']).visit?.job.plans.length ?? 0,
    );
  });
});

it('plans a lamp cradle and a swivel seat, which share the battery and the taking in alone', () => {
  const { visit, findings } = shop.plan(['swivel-seat', 'lamp-cradle'], build);
  expect(findings).toEqual([]);
  expect(visit?.job.violations).toEqual([]);
  expect(visit?.guide.visit?.guides.map(({ id }) => id)).toEqual(['lamp-cradle', 'swivel-seat']);
  expect(visit?.guide.visit?.shared.length).toBeGreaterThan(2);
});

it('plans a trio: what all three share is done once, and no time is longer than theirs in a row', () => {
  const { visit, findings } = shop.plan(['side-awning', 'lamp-cradle', 'roof-vent'], build);
  expect(findings).toEqual([]);
  expect(visit?.job.violations).toEqual([]);
  const told = visit?.guide.visit;
  expect(told?.shared.filter(({ guides }) => guides.length === 3).map(({ step }) => step)).toContain(
    'battery',
  );
  for (const { together, apart } of told?.savings ?? []) {
    const inARow = apart.reduce((sum, { handsOn }) => sum + handsOn, 0);
    const twice = (told?.shared ?? []).map(({ step, guides }) => [step, guides.length - 1] as const);
    const own = visit?.guide as Guide;
    const saved = twice.reduce((sum, [step, times]) => sum + mean(own, new Set([step])) * times, 0);
    expect(together.handsOn).toBeCloseTo(inARow - saved, 1);
    for (const [place, { minutes }] of together.elapsed.entries())
      expect(minutes).toBeLessThanOrEqual(
        apart.reduce((sum, { elapsed }) => sum + (elapsed[place]?.minutes ?? 0), 0) + 0.5,
      );
  }
});

it('changes nothing of a guide that is alone in its visit', () => {
  const { visit } = shop.plan(['roof-vent'], build);
  const [saving] = visit?.guide.visit?.savings ?? [];
  expect(saving?.together.handsOn).toBeCloseTo(saving?.apart[0]?.handsOn ?? 0);
  expect(visit?.guide.visit?.shared).toEqual([]);
  expect(stepsOf(visit?.guide as Guide)).toHaveLength(
    shop.guide('roof-vent').job.plans[0]?.steps.length ?? 0,
  );
});

describe('baybook visit', () => {
  it('prints the plan with its sum, and the same as data', async () => {
    const { folder } = await bench(randomWorkspace(2, ['lamp', 'mirror']));
    const { code, out } = await baybook(folder, 'visit', 'mirror', 'lamp', '--build', 'no fog');
    expect(code).toBe(0);
    expect(out.replaceAll('\u00a0', ' ')).toMatch(
      /Hands-on: .* \+ .* = .* one after the other; .* in one visit; .* saved/,
    );
    for (const title of ['Why in this order', 'To gather', 'Steps', 'Prove'])
      expect(out).toContain(`\n${title}\n`);
    const data = JSON.parse((await baybook(folder, 'visit', 'lamp', 'mirror', '--format', 'json')).out);
    expect(data.visit.guides.map((guide: { id: string }) => guide.id)).toEqual(['lamp', 'mirror']);
  }, 60_000);

  it('refuses a guide that is not there, one twice, and one with errors', async () => {
    const { folder, change } = await bench(randomWorkspace(2, ['lamp', 'mirror']));
    const unknown = await baybook(folder, 'visit', 'lamp', 'miror');
    expect(unknown).toMatchObject({ code: 2, err: expect.stringContaining('did you mean "mirror"?') });
    const twice = await baybook(folder, 'visit', 'lamp', 'lamp');
    expect(twice).toMatchObject({ code: 1, err: expect.stringContaining('named twice') });
    await change('lamp/guide.md', '{#look time=', '{#look tim=');
    const faulty = await baybook(folder, 'visit', 'lamp', 'mirror');
    expect(faulty).toMatchObject({ code: 1, err: expect.stringContaining('visit-guide-faulty') });
  }, 60_000);
});

it('is checked by its name or path, with the guides that it is made of', async () => {
  const { folder, check, change } = await bench({
    ...randomWorkspace(2, ['lamp', 'mirror', 'rack']),
    'visits/both.md': '---\ntitle: Both\nplatform: example-van\nguides: lamp mirror\n---\n\nA note.\n',
  });
  for (const name of ['both', 'visits/both.md'])
    expect((await check(name)).out).toBe('2 guides checked: no errors, no warnings\n');
  expect((await baybook(folder, 'check', 'both', '--read')).out).toContain('\nBoth');
  await change('visits/both.md', 'guides: lamp mirror', 'guides: lamp lamp');
  expect((await check('both')).out).toContain('visit-guide-repeated');
  // What a visit makes of its guides is no matter of a guide that is checked alone.
  expect((await check('lamp')).out).not.toContain('visit-guide-repeated');
  expect((await check('boht')).err).toContain('did you mean "both"?');
});
