import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import type { GuideJson } from '../../src/pages/guide/guide-schema.ts';
import { demoSite } from '../site/demo-site.ts';
import { holds, stepsOf, totalsOf, usedOf } from './totals.ts';

// The whole demo is built once.
vi.setConfig({ hookTimeout: 240_000 });

interface Printed {
  readonly json: GuideJson;
  readonly html: string;
}

let guides: readonly Printed[];

beforeAll(async () => {
  const folder = await demoSite();
  const names = (await readdir(join(folder, 'guides'))).sort();
  guides = await Promise.all(
    names.map(async (name) => ({
      json: JSON.parse(await readFile(join(folder, 'guides', name, 'guide.json'), 'utf8')),
      html: await readFile(join(folder, 'guides', name, 'index.html'), 'utf8'),
    })),
  );
});

/** A total of every plan of every guide: as printed, and as the sums over the JSON have it. */
function everyPlan(
  look: (
    plan: GuideJson['plans'][number],
    printed: Printed,
  ) => readonly (readonly [what: string, printed: unknown, summed: unknown])[],
) {
  const rows = guides.flatMap((guide) =>
    guide.json.plans.flatMap((plan) =>
      look(plan, guide).map(([what, printed, summed]) => ({
        what: `${guide.json.id}, plan ${plan.index}, ${what}`,
        printed,
        summed,
      })),
    ),
  );
  return {
    printed: rows.map(({ what, printed }) => [what, printed]),
    summed: rows.map(({ what, summed }) => [what, summed]),
  };
}

/** The texts of a row of "At a glance" that a plan shows, without what says for which builds they are. */
function glance(html: string, label: string, plan: number): readonly string[] {
  const cell = html.split(`<th scope="row">${label}</th><td>`)[1]?.split('</td>')[0] ?? '';
  return shownLines(cell, 'div', plan);
}

function shownLines(html: string, tag: string, plan: number): readonly string[] {
  const lines = html.matchAll(
    new RegExp(`<${tag}((?: [^>]*)?)>(.*?)(?: ?<span class="only">.*?)?</${tag}>`, 'gs'),
  );
  return [...lines].flatMap(([, attributes = '', text = '']) => {
    const plans = /data-plans="([^"]*)"/.exec(attributes)?.[1];
    return plans === undefined || plans.split(' ').includes(String(plan)) ? [text] : [];
  });
}

/** The words that a plan shows at the head of some HTML: those of all plans stand bare, others in an element each. */
function shownWords(html: string, plan: number): string | undefined {
  return /^[^<]+/.exec(html)?.[0] ?? shownLines(html, 'span', plan)[0];
}

/** `1 h 42 min` in minutes. */
function minutes(text: string): number {
  const [, days, hours, rest] = /^(?:(\d+)\sd)?\s?(?:(\d+)\sh)?\s?(?:(\d+)\smin)?$/.exec(text) ?? [];
  if (!days && !hours && !rest) throw new Error(`not a length of time: "${text}"`);
  return Number(days ?? 0) * 1440 + Number(hours ?? 0) * 60 + Number(rest ?? 0);
}

/** `26–47 min, likely 34 min`, `45 min to 1 h 30 min`, `5 min` in minutes. */
function estimate(text = ''): readonly [least: number, likely: number, most: number] {
  const [span = '', likely] = text.split(', likely ');
  const [first = '', last] = span.split(/ to |–\u2060?/);
  if (last === undefined) return [minutes(first), minutes(first), minutes(first)];
  const least = /^\d+$/.test(first) ? Number(first) : minutes(first);
  return [least, likely ? minutes(likely) : (least + minutes(last)) / 2, minutes(last)];
}

describe('the totals that the demo prints', () => {
  it('stand for eight guides', () => {
    expect(guides).toHaveLength(8);
  });

  it('are of the steps that every build of a plan does', () => {
    const { printed, summed } = everyPlan((plan, { json }) =>
      plan.builds.map((build) => [
        JSON.stringify(build),
        plan.steps.map(({ id }) => id),
        stepsOf(json, build).map(({ id }) => id),
      ]),
    );
    expect(printed).toEqual(summed);
  });

  it('agree with a sum over the JSON: hands-on, average, labour, second person, waiting', () => {
    const { printed, summed } = everyPlan((plan, { json, html }) => {
      const sum = totalsOf(stepsOf(json, plan.builds[0] ?? {}));
      const [handsOn, average] = glance(html, 'Hands-on', plan.index);
      const [, mean = '', spread = ''] = /^(.*) on average, give or take (.*)$/.exec(average ?? '') ?? [];
      const [labour] = glance(html, 'Labour', plan.index);
      const [shared = ''] = glance(html, 'Second person', plan.index);
      const [waiting = ''] = glance(html, 'Waiting', plan.index);
      return [
        ['hands-on', estimate(handsOn), [sum.least, sum.likely, sum.most]],
        ['average', [minutes(mean), minutes(spread)], [Math.round(sum.mean), Math.round(sum.spread)]],
        ['labour', labour, `${sum.labour.toFixed(1)}\u00a0h`],
        ['second person', shared === 'not needed' ? 0 : estimate(shared)[1], sum.shared],
        ['waiting', waiting === 'none' ? 0 : minutes(waiting), sum.waiting],
      ];
    });
    expect(printed).toEqual(summed);
  });

  it('agree under each section', () => {
    const { printed, summed } = everyPlan((plan, { json, html }) =>
      json.sections.map(({ id, steps }) => {
        const head = html.split(`<h2 id="${id}_title">`)[1]?.split('</header>')[0] ?? '';
        const time = shownWords(head.split('<p class="facts">')[1] ?? '', plan.index);
        const sum = totalsOf(steps.filter(({ when }) => holds(when, plan.builds[0] ?? {})));
        return [id, time ? estimate(time) : [0, 0, 0], [sum.least, sum.likely, sum.most]];
      }),
    );
    expect(printed).toEqual(summed);
  });

  it('have every step in the schedule at its average, and end when the last of them or its wait ends', () => {
    const { printed, summed } = everyPlan((plan, { json, html }) => {
      const steps = stepsOf(json, plan.builds[0] ?? {});
      return plan.schedules.flatMap(({ crew, tasks }) => {
        const label = ['', 'Elapsed, one technician', 'Elapsed, two technicians'][crew] ?? '';
        const [elapsed = ''] = glance(html, label, plan.index);
        const end = Math.max(...tasks.map(({ finish, wait }) => finish + wait));
        return [
          [`elapsed with ${crew}`, minutes(elapsed), Math.round(end)],
          ...steps.map((step) => {
            const own = tasks.filter((task) => task.step === step.id);
            const length = own.reduce((total, { start, finish }) => total + finish - start, 0);
            return [`${step.id} with ${crew}`, length.toFixed(1), totalsOf([step]).mean.toFixed(1)] as const;
          }),
        ] as const;
      });
    });
    expect(printed).toEqual(summed);
  });

  it('call a helper for one technician just when the steps for two run', () => {
    const { printed, summed } = everyPlan((plan, { html }) => {
      const words = glance(html, 'Elapsed, one technician', plan.index)[1] ?? '';
      // "from minute 20 to 32", and beyond a day "from 1 d 5 h to 1 d 5 h 12 min after the start".
      const spans = [...words.matchAll(/from (?:minute (\d+) to (\d+)|(.+?) to (.+?) after the start)/g)].map(
        ([, from, to, later, last]) =>
          later && last ? [minutes(later), minutes(last)] : [Number(from), Number(to)],
      );
      const needed = (plan.schedules[0]?.tasks ?? []).filter(({ people }) => people > 1);
      const joined: [number, number][] = [];
      for (const { start, finish } of needed) {
        const last = joined.at(-1);
        if (last && Math.abs(last[1] - start) < 1e-6) last[1] = finish;
        else joined.push([start, finish]);
      }
      return [['helper', spans, joined.map(([from, to]) => [Math.floor(from), Math.ceil(to)])]];
    });
    expect(printed).toEqual(summed);
  });

  it('never praise a second technician beyond what the schedules show', () => {
    const { printed, summed } = everyPlan((plan, { html }) => {
      const [one, two] = plan.schedules.map(({ elapsed }) => Math.round(elapsed.mean));
      const said = glance(html, 'Elapsed, two technicians', plan.index)[1]?.split('. ')[0];
      const expected =
        Number(two) < Number(one)
          ? `With a second technician: ${two} min instead of ${one} min`
          : 'A second technician does not make the job shorter';
      return [['second technician', said?.replaceAll('\u00a0', ' '), expected]];
    });
    expect(printed).toEqual(summed);
  });

  it('agree on what of each supply is used', () => {
    const { printed, summed } = everyPlan((plan, { json, html }) => {
      const build = plan.builds[0] ?? {};
      const steps = stepsOf(json, build);
      return plan.gather.supplies.flatMap(({ item, declared }) => {
        const used = usedOf(item, steps, build);
        if (!declared || used === null) return [];
        const row = html.split(`id="item_${item}"`)[1]?.split('</tr>')[0] ?? '';
        const said = shownWords(row.split('the steps use ')[1] ?? '', plan.index) ?? '';
        const inUnit = used / (declared.base / Number(declared.written));
        const own = said.replaceAll('\u00a0', ' ').replace(/ \(.*\)$/, '');
        return [[item, own, `${Number(inUnit.toPrecision(3))} ${declared.unit}`]];
      });
    });
    expect(printed.length).toBeGreaterThan(10);
    expect(printed).toEqual(summed);
  });

  it('agree on how many of each thing come in the box', () => {
    const { printed, summed } = everyPlan((plan, { json, html }) =>
      plan.gather.kit.map(({ item }) => {
        const declared = json.items.find(({ id }) => id === item);
        const row = html.split(`id="item_${item}"`)[1]?.split('</tr>')[0] ?? '';
        const count = /<td class="amount">(?:<span>)?(\d+)/.exec(row)?.[1];
        return [item, Number(count), (declared?.count ?? 0) * (declared?.side === 'each' ? 2 : 1)];
      }),
    );
    expect(printed).toEqual(summed);
  });
});

describe('the conditions of the sums', () => {
  it('are read as the format says: not before and, and before or', () => {
    const build = { fog: true, lamps: 'led', tow: false };
    const texts = {
      fog: true,
      'not tow': true,
      'lamps is led': true,
      'lamps is halogen': false,
      'fog and not (tow or lamps is led)': false,
      'tow and fog or fog': true,
    };
    expect(Object.keys(texts).map((text) => holds(text, build))).toEqual(Object.values(texts));
  });
});

/** Minutes from the beginning to the end of the job, for a crew, and how long nobody works meanwhile. */
function course(id: string, crew: number) {
  const plan = guides.find(({ json }) => json.id === id)?.json.plans[0];
  const schedule = plan?.schedules.find((one) => one.crew === crew);
  if (!schedule) throw new Error(`no schedule of ${id} for ${crew}`);
  const busy = schedule.tasks.reduce((minutes, { start, finish, people }, index) => {
    const before = schedule.tasks.slice(0, index).reduce((end, one) => Math.max(end, one.finish), 0);
    return minutes + (people > 0 ? Math.max(0, finish - Math.max(start, before)) : 0);
  }, 0);
  return { elapsed: schedule.elapsed.mean, idle: schedule.elapsed.mean - busy };
}

describe('the work that the demo marks free', () => {
  it('saves two technicians at least a seventh of the lamp cradle, and of the switch panel', () => {
    for (const id of ['lamp-cradle', 'switch-panel']) {
      expect(course(id, 2).elapsed / course(id, 1).elapsed, id).toBeLessThanOrEqual(6 / 7);
    }
  });

  it('lets nobody idle for more than 13 min at the roof vent, but for the night in which the sealant cures', () => {
    expect(course('roof-vent', 1).idle - 24 * 60).toBeLessThanOrEqual(13);
  });
});
