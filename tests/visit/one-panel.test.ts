import { expect, it } from 'vitest';
import { panelViews } from '../../src/cut/drawing/panel-view.ts';
import { resolve } from '../../src/cut/shape/resolve.ts';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import { guideHtml } from '../pages/render.ts';

const nones = (...kinds: readonly string[]) => kinds.map((of) => `::none{of=${of}}\n`).join('');

/** A guide that drills one hole of 9 mm in the roof rail, so far from the datum. */
const guide = (title: string, across: number, web: string) => `---
title: ${title}, on the roof
platform: example-van
---

## What you need {#need}

${nones('supplies', 'kit', 'conditions')}
::tool[9 mm drill]{#drill diameter="9 mm"}
::wear[Eye protection]{#eyes}
::part{#rail}

## Drill {#drilling}

:::cut-template[${title} hole]{#holes panel=rail face=outside web="${web}"}
::datum[Middle]{axis=vertical at="0 mm"}
::datum[Edge]{axis=horizontal at="0 mm"}
::hole[Hole]{#hole centre="${across},0" diameter="9 mm" unit=mm}
:::

::step[Try it]{#trial time="2 min"}

Hold it up.

::step[Drill the hole]{#drill-it time="5 min"}

:::warning[Flying swarf]
Chips blind an eye. Wear :wear[eyes].
:::

:drill[hole]{with=drill trial=trial}.
`;

const visitOf = (apart: number, web: string) =>
  inspect(
    memoryFiles({
      'shop.yaml': 'name: Example Fitting\n',
      'platforms/example-van.md': '---\ntitle: Example van\n---\n\nA van.\n\n::part[Roof rail]{#rail}\n',
      'lamp/guide.md': guide('Lamp', 0, '10 mm'),
      'mirror/guide.md': guide('Mirror', apart, web),
      'visits/both.md': '---\ntitle: Both\nplatform: example-van\nguides: lamp mirror\n---\n\nA note.\n',
    }),
  );

it('draws what two guides cut in one panel on one drawing, with the panel that stays between the nearest', async () => {
  const { visits, shop, findings } = await visitOf(40, '15 mm');
  expect(findings).toEqual([]);
  const [visit] = visits;
  if (!visit) throw new Error('no visit');
  const html = guideHtml(visit.guide, visit.job, shop).replaceAll('\u00a0', ' ');
  const [, part = ''] = /<h3 id="one_panel">(.*?)<\/section>/s.exec(html) ?? [];
  // Two holes of 9 mm, 40 mm from centre to centre: 40 - 9/2 - 9/2 = 31 mm stay.
  expect(part).toContain('Nearest: 1A and 2A, with 31 mm (1 7/32 in) of panel between them; at least 15 mm');
  expect(part).toMatch(/href="#lamp_holes">Lamp hole \(Lamp\).*href="#mirror_holes">Mirror hole \(Mirror\)/s);
  expect([...part.matchAll(/class="cut-text"[^>]*>([^<]*)</g)].map(([, text]) => text)).toEqual([
    '31 mm',
    '1A',
    '2A',
  ]);
});

it.each([
  ['too near', 20, /only 11 mm of panel stays/],
  ['over each other', 6, /overlap on the panel/],
])('tells of two cuts %s with both places, and marks them on the drawing', async (_, apart, words) => {
  const { findings, visits, guides } = await visitOf(apart, '15 mm');
  const [found, ...more] = findings;
  expect(more).toEqual([]);
  expect(found?.message).toMatch(words);
  expect([found?.at.file, found?.notes[0]?.at?.file]).toEqual(['lamp/guide.md', 'mirror/guide.md']);
  expect(visits).toHaveLength(1);
  const templates = guides.flatMap((one) => [...one.guide.templates.values()]);
  const [view] = panelViews(
    templates.map((template) => ({ template, resolved: resolve(template).resolved })),
  );
  if (!view) throw new Error('nothing is drawn');
  const widths = [...view.drawing.matchAll(/class="cut-line"[^>]*stroke-width="([\d.]+)"/g)];
  const sound = panelViews(
    templates.map((template) => ({
      template: { ...template, web: null },
      resolved: resolve(template).resolved,
    })),
  )[0]?.drawing;
  const plain = [...(sound ?? '').matchAll(/class="cut-line"[^>]*stroke-width="([\d.]+)"/g)];
  expect(widths.map(([, width]) => Number(width))).toEqual(
    plain.map(([, width]) => expect.closeTo(2 * Number(width), 3)),
  );
  expect(widths).toHaveLength(2);
});

it('draws nothing of templates that share no panel, or lie on other sides of the vehicle', async () => {
  const { guides } = await visitOf(40, '15 mm');
  const templates = guides.flatMap((one) => [...one.guide.templates.values()]);
  const [first, second] = templates;
  if (!first || !second) throw new Error('no templates');
  const drawn = (...list: (typeof templates)[number][]) =>
    panelViews(list.map((template) => ({ template, resolved: resolve(template).resolved })));
  expect(drawn(first, { ...second, datums: second.datums.slice(1) })).toEqual([]);
  expect(drawn({ ...first, side: 'left' }, { ...second, side: 'right' })).toEqual([]);
  expect(drawn({ ...first, side: 'left' }, { ...second, side: 'each' }).map(({ side }) => side)).toEqual([
    'left',
  ]);
});

it.each([12, 14, 20, 40])('letters two cuts %i mm apart so that no words lie on others', async (apart) => {
  const { guides } = await visitOf(apart, '1 mm');
  const templates = guides.flatMap((one) => [...one.guide.templates.values()]);
  const views = panelViews(templates.map((template) => ({ template, resolved: resolve(template).resolved })));
  const found = [
    ...(views[0]?.drawing ?? '').matchAll(
      /<text [^>]*x="([\d.]+)" y="([\d.]+)" font-size="([\d.]+)"[^>]*>([^<]*)/g,
    ),
  ];
  // The advance of a figure in DejaVu Sans is 0.636 of its size, and its capitals are 0.729 high.
  const boxes = found.map(([, x, y, size, text = '']) => ({
    text,
    from: [Number(x), Number(y) - 0.729 * Number(size)],
    to: [Number(x) + 0.636 * Number(size) * text.length, Number(y)],
  }));
  expect(boxes.map(({ text }) => text)).toEqual(expect.arrayContaining(['1A', '2A']));
  for (const [index, a] of boxes.entries())
    for (const b of boxes.slice(index + 1))
      expect(
        [0, 1].some(
          (axis) => (a.to[axis] ?? 0) <= (b.from[axis] ?? 0) || (b.to[axis] ?? 0) <= (a.from[axis] ?? 0),
        ),
      ).toBe(true);
});
