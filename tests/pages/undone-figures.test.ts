import { describe, expect, it } from 'vitest';
import type { Figure } from '../../src/model/block.ts';
import { guidePage } from '../../src/pages/guide/guide-page.ts';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import { noStore } from '../../src/store/store.ts';
import { exampleWorkspace } from '../example-workspace.ts';
import { guideHtml, shelf } from './render.ts';

const body = `## Parts {#parts}

::part[Edge trim]{#trim}
::fastener[Trim screw]{#screw holds=trim}
::tool[Lever]{#lever}

## Strip down {#strip}

::step[Take off the trim]{#off side=left}

With the :tool[lever], :remove[screw] and :remove[trim].

:::figure[The edge]{src=edge.svg alt="Edge of the trim" shows=left}
- :mark[A]{at="20%,40%"} :fastener[screw]
- :mark[B]{at="40%,40%"} :part[trim]
:::

:::figure[Where the lever goes]{src=edge.svg alt="Lip of the trim"}
- :mark[A]{at="20%,40%"} lip
:::

:::figure[The lever]{src=edge.svg alt="A lever"}
- :mark[A]{at="20%,40%"} :tool[lever]
:::

## Refit {#refit}

::reverse{of=strip}
`;

async function read() {
  const files = exampleWorkspace({
    'example/guide.md': body,
    'example/edge.svg':
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 6"><path d="M0 0h9v6H0z"/></svg>',
  });
  const { guides, shop } = await inspect(memoryFiles(files), noStore);
  const [inspected] = guides;
  if (!inspected) throw new Error('the example cannot be read');
  return { ...inspected, shop };
}

describe('a step that undoes another', () => {
  it('shows the pictures of that one, but for those that mark only what it does not handle', async () => {
    const { guide, job, shop } = await read();
    const html = guideHtml(guide, job, shop);
    const step = html.slice(html.indexOf('id="refit-off"')).split('</article>')[0] ?? '';
    expect(step.match(/<img [^>]*alt="[^"]*"/g)?.map((img) => /alt="([^"]*)"/.exec(img)?.[1])).toEqual([
      'Edge of the trim',
      'Lip of the trim',
    ]);
    expect(step).toContain(
      'Picture of step <a href="#off" title="Take off the trim"><span data-step="off">1</span></a>',
    );
    expect(step).toContain('the other way round.');
  });

  it('says that it is shown as taken off where the drawing does not show the way back', async () => {
    const { guide, job, shop } = await read();
    const still = {
      ...shelf,
      picture: (path: string, figure: Figure | null, turned = false) =>
        turned ? null : shelf.picture(path, figure),
    };
    const view = guidePage(guide, job, { shop, shelf: still, root: '../../' });
    const steps = view.sections.flatMap((section) => section.steps);
    const undone = steps.map(({ blocks }) =>
      blocks.flatMap((block) => (block.type === 'figure' && block.undoes ? [block.undoes] : [])),
    );
    const of = { id: 'off', number: 1, title: 'Take off the trim', href: '#off' };
    expect(undone).toEqual([
      [],
      [
        { step: of, turned: false },
        { step: of, turned: false },
      ],
    ]);
  });
});
