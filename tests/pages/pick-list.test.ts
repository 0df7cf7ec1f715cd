import { expect, it } from 'vitest';
import { bench } from '../driver.ts';

const guide = `---
title: Lamp bracket
platform: van
options:
  fog: Front fog lamps
---

## What you need {#need}

::wear[Work gloves]{#gloves}
::none{of=conditions}
::tool[T25 bit]{#bit drive=T25}
::supply{#sealant quantity="630 ml"}
::supply{#wipe quantity="1 l" when=fog}
::supply[Loom tape, 19 mm "cloth"]{#tape quantity="2 m"}
::kit[Bracket, left and right]{#bracket side=each}

## Work {#work}

::step[Fit the brackets]{#fit}

Put on the :wear[gloves]. :apply[sealant]{amount="620 ml"} and :fit[bracket]. Wind :apply[tape]{amount="2 m"} on with the :tool[bit].
:where[:apply[wipe]{amount="1 l"}.]{when=fog}
`;

/** Fields of a line after RFC 4180, section 2: a quoted one may hold commas, and doubles its quotes. */
function fields(line: string): readonly string[] {
  return [...line.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/g)]
    .map(([, field = '']) => (field.startsWith('"') ? field.slice(1, -1).replaceAll('""', '"') : field))
    .slice(0, 10);
}

it('lists what each build takes from the shelves, supplies in whole packs', async () => {
  const { build, page } = await bench({
    'shop.yaml': 'name: Example Fitting\n',
    'supplies.yaml': 'sealant: {name: Sealant, pack: 310 ml}\nwipe: {name: Panel wipe, pack: 500 ml}\n',
    'platforms/van.md': '---\ntitle: Van\n---\n\nA van.\n',
    'lamp/guide.md': guide,
  });
  expect((await build()).out).toContain('1 guide checked: no errors');
  const text = await page('guides/lamp/pick-list.csv');
  expect(text.endsWith('\r\n')).toBe(true);
  const [head = [], ...rows] = text.split('\r\n').slice(0, -1).map(fields);
  expect(head.join(' ')).toBe('build list id name detail count quantity unit packs pack');
  const builds = [...new Set(rows.map(([one]) => one))];
  expect(builds).toEqual(['with front fog lamps', 'without front fog lamps']);
  const of = (build: string | undefined) =>
    rows
      .filter(([one]) => one === build)
      .map(([, list, id, name, , ...rest]) => [list, id, name, ...rest].join('|'));
  const both = [
    'kit|bracket|Bracket, left and right|2||||',
    'supply|sealant|Sealant||630|ml|3|310 ml',
    'supply|wipe|Panel wipe||1|l|2|500 ml',
    'supply|tape|Loom tape, 19 mm "cloth"||2|m||',
    'tool|bit|T25 bit|1||||',
    'wear|gloves|Work gloves|||||',
  ];
  expect(of(builds[0])).toEqual(both);
  expect(of(builds[1])).toEqual(both.filter((line) => !line.includes('wipe')));
});
