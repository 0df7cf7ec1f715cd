import { expect, it } from 'vitest';
import { bench } from '../driver.ts';
import { exampleWorkspace } from '../example-workspace.ts';

it('tells of what comes in the box by the kind of fastener whose name ends its own, and of a part that a bolt goes through', async () => {
  const found = await bench(
    exampleWorkspace({
      'fasteners.yaml': 'rivet-nut:\n  name: Rivet nut\nlong-bolt:\n  name: Another bolt\n',
      'platforms/example-van.md':
        '---\ntitle: Example van\n---\n\nA van.\n\n## Parts {#parts}\n\n::part[Lug]{#lug}\n',
      'example/guide.md': [
        '::none{of=tools}',
        '::part{#lug}',
        '::kit[Rivet nut, M8 steel]{#sleeve}',
        '::kit[Bar]{#bar}',
        '::kit[Long bolt]{#bolt thread=M8x1.25 holds=bar stack="bar lug"}',
        '',
        '::step[Set the sleeve]{#set}',
        '',
        ':fit[sleeve].',
        '',
        '::step[Bolt it]{#bolt-it}',
        '',
        ':fit[bar]. :start[bolt]. :tighten[bolt].',
        '',
      ].join('\n'),
    }),
  );
  const { code, out } = await found.build();
  expect(code, out).toBe(0);
  expect(await found.page('fasteners/rivet-nut/index.html')).toContain('guides/example/index.html#set');
  expect(await found.page('glossary/index.html')).toContain('guides/example/index.html#set');
  // The name of an entry must be the words too.
  expect(await found.page('fasteners/long-bolt/index.html')).toContain('No guide of this shop uses it yet');
  expect(await found.page('guides/example/index.html')).toContain('../../fasteners/rivet-nut/index.html');
  expect(await found.page('platforms/example-van/index.html')).toMatch(
    /Lug<\/th><td><a href="\.\.\/\.\.\/guides\/example\/index\.html#item_bolt"/,
  );
});
