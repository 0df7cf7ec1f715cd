import { expect, it } from 'vitest';
import { notChecked } from '../../src/checks/index.ts';
import { stepsOf } from '../../src/job/actions/walk.ts';
import { notCheckedWords } from '../../src/pages/overview/not-checked.ts';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import { visitRouteCut } from '../../src/visit/rules.ts';

const platform =
  '---\ntitle: Example van\noptions:\n  fog: Front fog lamps\n---\n\nA van.\n\n::part[Fuse way 7]{#way-7}\n::part[Earth point]{#earth count=2}\n::rating[Roof load]{#roof-load limit="100 kg"}\n::rating[Feed of the load space]{#feed limit="30 A"}\n::rating[Second battery]{#battery limit="50 A·h"}\n';

/** A guide that declares some things and fits what it has in its box. */
const guide = (title: string, declared: string, work = 'Look at it.') =>
  `---\ntitle: ${title}\nplatform: example-van\n---\n\n## What you need {#need}\n\n${['wear', 'tools', 'supplies', 'conditions'].map((of) => `::none{of=${of}}\n`).join('')}${declared.includes('::kit') ? '' : '::none{of=kit}\n'}\n${declared}\n## Work {#work}\n\n::step[Work on the ${title.toLowerCase()}]{#work-on time="5 min"}\n\n${work}\n`;

async function visitOf(guides: { readonly [name: string]: string }) {
  const names = Object.keys(guides);
  return inspect(
    memoryFiles({
      'shop.yaml': 'name: Example Fitting\n',
      'platforms/example-van.md': platform,
      ...Object.fromEntries(names.map((name) => [`${name}/guide.md`, guides[name] ?? ''])),
      'visits/both.md': `---\ntitle: Both\nplatform: example-van\nguides: ${names.join(' ')}\n---\n\nA note.\n`,
    }),
  );
}

const fuse = (title: string, place: string, more = '') =>
  guide(title, `::part{#${place}}\n::kit[${title} fuse]{#fuse takes=${place}${more}}\n`, ':fit[fuse].');

it('tells of a place that two guides take, with both, and not where no build has both or there is room', async () => {
  const taken = await visitOf({ lamp: fuse('Lamp', 'way-7'), fan: fuse('Fan', 'way-7') });
  const [found, ...more] = taken.findings;
  expect(more).toEqual([]);
  expect(found).toMatchObject({ code: 'place-taken-twice', at: { file: 'lamp/guide.md' } });
  expect(found?.notes.map(({ at }) => at?.file)).toContain('fan/guide.md');

  const roomy = await visitOf({ lamp: fuse('Lamp', 'earth'), fan: fuse('Fan', 'earth') });
  expect(roomy.findings).toEqual([]);
  const full = await visitOf({
    lamp: fuse('Lamp', 'earth'),
    fan: fuse('Fan', 'earth'),
    rack: fuse('Rack', 'earth'),
  });
  expect(full.findings.map(({ code }) => code)).toEqual(['place-taken-twice']);
});

it('sums what the guides load one limit with, and says under “not checked” who states nothing', async () => {
  const load = (title: string, claim: string) =>
    guide(title, `::rating{#roof-load}\n::rating[${title} on the roof]{#load claim="${claim}"}\n`);
  const heavy = await visitOf({ lamp: load('Lamp', '60 kg'), fan: load('Fan', '90 lb') });
  // 90 lb are 40.8 kg (1 lb = 0.45359237 kg, the international pound of 1959): 100.8 kg.
  expect(heavy.findings.map(({ code }) => code)).toEqual(['visit-load-exceeded']);
  const light = await visitOf({
    lamp: load('Lamp', '60 kg'),
    fan: load('Fan', '88 lb'),
    rack: guide('Rack', '::rating{#roof-load}\n'),
  });
  expect(light.findings).toEqual([]);
  const [visit] = light.visits;
  expect(visit && notChecked(visit.guide).map((one) => notCheckedWords(one, visit.guide))).toEqual([
    'what “Rack” adds to the roof load: it states no load',
  ]);
});

it('counts what circuits draw towards a limit in amperes', async () => {
  const draw = (title: string, load: string) =>
    guide(
      title,
      `::rating{#feed}\n::circuit[${title} feed]{#own-feed load="${load}" length="2 m" wire="6 mm²" fuse="25 A" voltage="12 V"}\n`,
    );
  const both = await visitOf({ lamp: draw('Lamp', '18 A'), fan: draw('Fan', '13 A') });
  const errors = both.findings.filter(({ severity }) => severity === 'error');
  expect(errors.map(({ message }) => message.replaceAll('\u00a0', ' '))).toEqual([
    'the feed of the load space may be 30 A at most, and these jobs load it with 13 A + 18 A = 31 A',
  ]);
});

it('counts what the guides take out of a battery towards what it may give', async () => {
  // What is drawn for so long, in hours: 2.5 A for 12 h are 30 A·h. What a battery may give is its maker's to say.
  const draw = (title: string, claim: string) =>
    guide(title, `::rating{#battery}\n::rating[${title} over a night]{#night claim="${claim}"}\n`);
  const both = await visitOf({ lamp: draw('Lamp', '30 Ah'), fan: draw('Fan', '28 A·h') });
  const errors = both.findings.filter(({ severity }) => severity === 'error');
  expect(errors.map(({ code, message }) => [code, message.replaceAll('\u00a0', ' ')])).toEqual([
    [
      'visit-load-exceeded',
      'the second battery may be 50 A·h at most, and these jobs load it with 28 A·h + 30 A·h = 58 A·h',
    ],
  ]);
  const light = await visitOf({ lamp: draw('Lamp', '30 Ah'), fan: draw('Fan', '18000 mAh') });
  expect(light.findings).toEqual([]);
});

it('drills before what lies along the same part is routed', async () => {
  const { visits } = await inspect(
    memoryFiles({
      'shop.yaml': 'name: Example Fitting\n',
      ...(visitRouteCut.bad as { [path: string]: string }),
    }),
  );
  const order = visits.flatMap(({ guide: planned }) => stepsOf(planned).map(({ id }) => id));
  expect(order.indexOf('mirror_drill-it')).toBeLessThan(order.indexOf('lamp_lay'));
  expect(order).toContain('mirror_drill-it');
});
