import { expect, it } from 'vitest';
import { told } from '../checks/told.ts';
import { bench } from '../driver.ts';
import { exampleWorkspace } from '../example-workspace.ts';

const body = (mention: string) => `::tool[8 mm bit]{#bit diameter="8 mm"}
::part[Bumper cover]{#cover}
::kit[Bolt]{#bolt count=3}
::kit[Relay]{#relay when=fog}

:::cut-template[Bolt holes]{#holes panel=cover face=outside}
::datum[Vehicle centreline]{axis=vertical at="0 mm"}
::datum[Lower edge of the cover]{axis=horizontal at="0 mm"}
::pattern[Row of bolt holes]{#row count=3 diameter="8 mm" along="-40,60 40,60" unit=mm for=bolt}
::hole[Relay hole]{#relay-hole centre="0,40" unit=mm diameter="8 mm" for=relay when=fog}
::slot[Cable slot]{from="0,90" to="30,90" unit=mm width="8 mm"}
:::

::step[Drill the holes]{#drill}

:::warning[Flying chips]
Chips can injure an eye. Wear :wear[eye-protection].
:::

${mention}
:drill[row]{with=bit}. :where[Then :drill[relay-hole]{with=bit}.]{when=fog}
:fit[bolt]. :where[:fit[relay].]{when=fog}
`;

const guide = (mention: string) => `::wear[Eye protection]{#eye-protection}\n${body(mention)}`;

it('a template has a table of what it cuts, and a hole that is named leads to its line', async () => {
  const found = await bench(exampleWorkspace(guide('Begin with the :hole[row].')));
  const { code, out } = await found.build();
  expect([code, out]).toEqual([0, expect.stringContaining('no errors, no warnings')]);
  const page = await found.page('guides/example/index.html');
  const lines = [
    ...page.matchAll(/<tr( id="item_[a-z-]+")?(?: data-plans="[\d ]+")?><td>([A-Z–]+)<\/td>(.*?)<\/tr>/g),
  ];
  expect(
    lines.map(([, id, marks, rest]) => [
      id?.trim(),
      marks,
      rest?.replace(/<[^>]+>/g, '|').replace(/\s/g, ' '),
    ]),
  ).toEqual([
    [undefined, 'A', '|Cable slot||8 mm (5/16 in) wide, 30 mm (1 3/16 in) between the centres of its ends|'],
    ['id="item_relay-hole"', 'B', '|Relay hole |(with front fog lamps)||for the relay|||Ø 8 mm (5/16 in)|'],
    ['id="item_row"', 'C–E', '|Row of bolt holes|for the bolt|||3 × Ø 8 mm (5/16 in)|'],
  ]);
  expect(page).toContain('Begin with the <a class="item" href="#item_row">row of bolt holes</a>.');
});

it('the table has the sizes of the line to cut, and says what was done to the figures of the guide', async () => {
  const written = `::outline{points="-40,200 40,200 40,260 -40,260" unit=mm}
::slot[Cable slot]{from="100,90" to="300,90" unit=mm width="8.25 mm"}`;
  const text = guide('Look behind. :cut[holes]{with=bit}.')
    .replace('face=outside}', 'face=outside set-back="0.5 mm" curve-radius="500 mm"}')
    .replace(/::slot.*/, written);
  const found = await bench(exampleWorkspace(text));
  const built = await found.build();
  expect([built.code, built.out]).toEqual([0, expect.stringContaining('no errors')]);
  const page = (await found.page('guides/example/index.html')).replace(/\u00a0|&nbsp;/g, ' ');
  // An arc of radius R over a half chord c is R · asin(c / R) long: 500 · asin(40 / 500) = 40.043.
  const wide = 2 * 500 * Math.asin(40 / 500) + 1;
  expect(page).toContain(`${wide.toFixed(2)} mm (3 3/16 in) × 61 mm (2 13/32 in) overall`);
  const apart = 500 * (Math.asin(300 / 500) - Math.asin(100 / 500));
  expect(page).toContain(`8.25 mm (21/64 in) wide, ${apart.toFixed(2)} mm`);
  expect(page).toContain('Set-back of 0.5 mm applied: every outline is cut that much outside its drawn line');
  const moved = (500 * Math.asin(300 / 500) - 300).toFixed(1);
  const unrolled = `Unrolled from a curve of 500 mm about an upright axis, points moved by up to ${moved} mm`;
  expect(page).toContain(unrolled);
  const { out } = await found.check();
  expect(out).toContain(`guides/example/guide.md: “Bolt holes”\n`);
  expect(out).toContain(`  ${unrolled}: press to the panel, do not bridge\n`);
});

it('names a sheet after the builds that it is for, and shows it for these alone', async () => {
  const found = await bench(exampleWorkspace(guide('Look behind.')));
  await found.build();
  const page = await found.page('guides/example/index.html');
  const files = [...page.matchAll(/<li data-plans="(\d)"><a href="(cut-templates[^"]*a4.pdf)">([^<]*)</g)];
  expect(files.map(([, plan, href, name]) => [plan, href, name])).toEqual([
    ['0', 'cut-templates/holes_fog-yes-a4.pdf', 'PDF, A4, with front fog lamps'],
    ['1', 'cut-templates/holes_fog-no-a4.pdf', 'PDF, A4, without front fog lamps'],
  ]);
  expect([...(await found.site()).keys()]).toEqual(
    expect.arrayContaining(files.map(([, , href]) => `guides/example/${href}`)),
  );
});

it.each([
  ['a hole that no template has', ':hole[rows]', ['item-undeclared: rows']],
  ['a hole that the build does not have', ':hole[relay-hole]', ['reference-dropped: relay-hole']],
  ['a part that is named as a hole', ':hole[cover]', ['mention-wrong-kind: cover']],
  ['a hole that is named as a template', ':cut-template[row]', ['mention-wrong-kind: row']],
])('%s is a finding', async (_, mention, findings) => {
  expect(await told(guide(`Look at the ${mention}.`))).toEqual(findings);
});
