import { describe, expect, it } from 'vitest';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import { noStore } from '../../src/store/store.ts';
import { exampleWorkspace } from '../example-workspace.ts';
import { guideHtml } from './render.ts';

const corners = '80%,20% 20%,80% 80%,80%';

const guide = (marks: string, figureWhen = '') => `## Parts {#parts}

::part[Plate]{#plate}
::fastener[Plate bolt]{#bolt count=4 torque="8 N·m" thread=M6x1 grade=8.8 drive="hex 10" pattern=cross holds=plate with="wrench socket"}
::tool[Torque wrench]{#wrench range="2..20 N·m"}
::tool[Socket]{#socket drive="hex 10"}

## Strip down {#strip}

::step[Take off the plate]{#off}

:remove[bolt] and :remove[plate].

:::figure[The plate]{src=plate.svg alt="A plate with a bolt at each corner"${figureWhen}}
${marks}
- :mark[Z]{at="50%,50%"} :part[plate]
:::

## Refit {#refit}

::reverse{of=strip}
`;

const drawing = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 90 60"><path d="M0 0h90v60H0z"/></svg>';

async function stepsOf(marks: string, figureWhen = '') {
  const files = exampleWorkspace({
    'example/guide.md': guide(marks, figureWhen),
    'example/plate.svg': drawing,
  });
  const { guides, shop } = await inspect(memoryFiles(files), noStore);
  const [inspected] = guides;
  if (!inspected) throw new Error('the example cannot be read');
  const html = guideHtml(inspected.guide, inspected.job, shop);
  const step = (id: string) => html.slice(html.indexOf(`id="${id}"`)).split('</article>')[0] ?? '';
  return { off: step('off'), back: step('refit-off') };
}

/** Where each number stands, in thousandths of the width, in the order of the numbers. */
function numbersIn(step: string): readonly string[] {
  const turns = step.split('class="mark-turns"')[1] ?? '';
  return [...turns.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)"/g)].map(([, x, y]) => `${x} ${y}`);
}

describe('the numbers of an order of tightening', () => {
  it('stand on the fasteners of the picture, and no drawing of its own tells the order again', async () => {
    const { off, back } = await stepsOf(`- :mark[A]{at="20%,20%" also="${corners}"} :fastener[bolt]`);
    // 640 × 400: 625 units high. Crosswise from the upper left.
    expect(numbersIn(back)).toEqual(['200 125', '800 500', '800 125', '200 500']);
    expect(back).not.toContain('tightening-order');
    expect(back).toContain('Plate bolts: the order of tightening');
    expect(back).toContain('Tightening order, clockwise from the upper left: 1, 3, 2, 4.');
    // What only takes them out has a dot on each.
    expect(numbersIn(off)).toEqual([]);
    expect(/class="mark-dot" d="([^"]*)"/.exec(off)?.[1]?.match(/M/g)).toHaveLength(5);
  });

  it('stand there too where each fastener has a letter of its own', async () => {
    const one = (letter: string, at: string) => `- :mark[${letter}]{at="${at}"} :fastener[bolt]`;
    const places = ['80%,80%', '20%,20%', '20%,80%', '80%,20%'];
    const { back } = await stepsOf(places.map((at, index) => one('ABCD'[index] ?? '', at)).join('\n'));
    expect(numbersIn(back)).toEqual(['200 125', '800 500', '800 125', '200 500']);
  });

  it.each([
    ['not each fastener has its place', `- :mark[A]{at="20%,20%" also="80%,20% 20%,80%"} :fastener[bolt]`],
    ['they stand in one line', `- :mark[A]{at="20%,20%" also="40%,20% 60%,20% 80%,20%"} :fastener[bolt]`],
    ['two are too near', `- :mark[A]{at="20%,20%" also="22%,20% 20%,80% 22%,80%"} :fastener[bolt]`],
    [
      'the mark is of something else',
      `- :mark[A]{at="20%,20%" also="${corners}"} :part[plate] and its :fastener[bolt]`,
    ],
  ])('stay in a drawing of their own where %s', async (_, marks) => {
    const { back } = await stepsOf(marks);
    expect(numbersIn(back)).toEqual([]);
    expect(back).toContain('tightening-order');
  });

  it('stay in a drawing of their own where the picture is for some builds alone', async () => {
    const { back } = await stepsOf(`- :mark[A]{at="20%,20%" also="${corners}"} :fastener[bolt]`, ' when=fog');
    expect(numbersIn(back)).toEqual([]);
    expect(back).toContain('tightening-order');
  });
});
