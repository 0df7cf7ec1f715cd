import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { type Bench, baybook, bench } from '../driver.ts';

const guide = (title: string, more: string, work: string) =>
  `---\ntitle: ${title}\nplatform: example-van\n${more}---\n\n## What you need {#need}\n\n::none{of=conditions}\n::none{of=kit}\n${work}`;

/** Two guides that take of one sealant, one of them more on a van with a lining, and share one drill. */
async function counter(): Promise<Bench> {
  const shop = await bench({
    'shop.yaml': 'name: Example Fitting\ncrew: 2\n',
    'tools.yaml':
      'drill: {name: Drill}\nlever: {name: Trim lever, count: 2}\ngloves: {name: Gloves, wear: yes}\n',
    'supplies.yaml': 'sealant: {name: Sealant, pack: 310 ml}\n',
    'platforms/example-van.md': '---\ntitle: Example van\noptions:\n  lining: Headlining\n---\n\nA van.\n',
    'vent/guide.md': guide(
      'Vent, "roof"',
      'part-number: QL-1\n',
      '::wear{#gloves}\n::tool{#drill}\n::tool{#lever}\n::supply{#sealant quantity="200 ml"}\n::supply[Tape, own]{#tape quantity="2 m"}\n\n## Work {#work}\n\n::step[Seal]{#seal time="5 min"}\n\nPut on the :wear[gloves], take :tool[drill] and :tool[lever], :apply[sealant]{amount="150 ml"} and :apply[tape]{amount="1 m"}.\n:where[Seal the lining too.]{when=lining}\n',
    ),
    'rack/guide.md': guide(
      'Rack',
      'part-number: QL-2\n',
      '::none{of=wear}\n::tool{#drill}\n::tool{#lever}\n::supply{#sealant quantity="60 ml"}\n::supply[Tape, own]{#tape quantity="3 m"}\n\n## Work {#work}\n\n::step[Hang]{#hang time="5 min"}\n\nTake :tool[drill] and :tool[lever], :apply[sealant]{amount="50 ml"} and :apply[tape]{amount="1 m"}.\n',
    ),
    'visits/both.md':
      '---\ntitle: Both\nplatform: example-van\nguides: vent rack\nbuild: no lining\n---\n\nA note.\n',
  });
  return shop;
}

it('sums what the jobs of a day need, in whole packs, and tells of what there is too little', async () => {
  const shop = await counter();
  await shop.write(
    'day.yaml',
    'title: Thursday\njobs:\n  - both\n  - {guides: vent, build: lining}\n  - rack\n',
  );
  const { code, out, err } = await baybook(shop.folder, 'day', 'guides/day.yaml');
  expect(err).toBe('');
  expect(code).toBe(0);
  // 200 + 60 ml in the visit, 200 ml for the vent, 60 ml for the rack: 520 ml are two cartridges of 310 ml.
  expect(out).toContain(
    '2 packs  Sealant, 310 ml a pack; 260 ml + 200 ml + 60 ml = 520 ml (jobs 1, 2 and 3)',
  );
  expect(out).toContain('2  Vent, "roof", part QL-1 (jobs 1 and 2)');
  // Two vehicles are under way at once where the crew is of two: one more drill; of levers there are two.
  expect(out).toContain('1 more  Drill, 2 wanted, 1 at hand (jobs 1, 2 and 3)');
  expect(out).toContain('2  Trim lever (jobs 1, 2 and 3)');
  // What each guide calls its own tape is not one tape.
  expect(out).toMatch(/4 m {2}Tape, own, for vent, 2 m \+ 2 m = 4 m \(jobs 1 and 2\)/);
  expect(out).toContain('2. Vent (lining)');
});

it('gives the list as comma-separated values and as a page to print', async () => {
  const shop = await counter();
  const { out } = await baybook(shop.folder, 'day', 'both', 'vent', '--format', 'csv');
  const lines = out.split('\r\n');
  expect(lines[0]).toBe('list,id,name,part number,count,quantity,unit,packs,pack,at hand,short,jobs');
  // A cell with quotes doubles them (RFC 4180, section 2).
  expect(lines).toContain('box,vent,"Vent, ""roof""",QL-1,2,,,,,,,1 2');
  expect(lines).toContain('supply,sealant,Sealant,,,460,ml,2,310 ml,,,1 2');
  expect(lines).toContain('tool,drill,Drill,,2,,,,,1,1,1 2');
  expect(lines.at(-1)).toBe('');
  const page = await baybook(
    shop.folder,
    'day',
    'both',
    'vent rack',
    '--format',
    'html',
    '--out',
    'day.html',
  );
  expect(page).toMatchObject({ code: 0, out: '' });
  const html = await readFile(join(shop.folder, 'day.html'), 'utf8');
  expect(html).toContain('<td class="amount">2 packs</td><td>Sealant<span class="detail">');
  expect(html).not.toMatch(/https?:|<script/);
});

it('says of a guide whose build is open that the most is listed, and refuses what cannot be planned', async () => {
  const shop = await counter();
  await shop.change(
    'vent/guide.md',
    '::supply{#sealant quantity="200 ml"}',
    '::supply{#sealant quantity="200 ml" when=lining}',
  );
  await shop.change(
    'vent/guide.md',
    ':apply[sealant]{amount="150 ml"} and ',
    ':where[:apply[sealant]{amount="150 ml"}.]{when=lining} And ',
  );
  const open = await baybook(shop.folder, 'day', 'vent');
  expect(open.out).toContain('its build is not all said: the most that any build takes is listed');
  expect(open.out).toContain('1 pack  Sealant, 310 ml a pack; 200 ml (job 1)');
  const without = await baybook(shop.folder, 'day', 'both');
  expect(without.out).toContain('1 pack  Sealant, 310 ml a pack; 60 ml (job 1)');

  await shop.write('day.yaml', 'title: Thursday\njobs:\n  - bohts\n');
  const unknown = await baybook(shop.folder, 'day', 'guides/day.yaml');
  expect(unknown).toMatchObject({ code: 1, out: '' });
  expect(unknown.err).toContain('there is no guide "bohts"');
  expect(unknown.err).toContain('day.yaml:3:5');
  expect((await baybook(shop.folder, 'day', 'no.yaml')).code).toBe(2);
  await shop.write('day.yaml', 'title: Thursday\njobs: []\n');
  expect((await baybook(shop.folder, 'day', 'guides/day.yaml')).err).toContain('one job at least');
});
