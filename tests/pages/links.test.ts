import { expect, it } from 'vitest';
import { bench } from '../driver.ts';
import { exampleWorkspace } from '../example-workspace.ts';

const guide = `::part[Cover]{#cover}
::part[Fog lamp]{#lamp when=fog}
::none{of=tools}
::none{of=kit}

## Take off {#off}

::step[Free the cover]{#free}

:remove[cover]. See <https://example.org/covers> and [the data page](https://example.org/maker).

## Extra {#extra}

::step[Free the lamp]{#lamp-off when=fog}

:remove[lamp]. The :step[free]{as="step before"} and [the place](#free) tell more.

## Refit {#refit}

::reverse{of=extra}
::reverse{of=off}
`;

it('links tell a print what their words leave out: the number of a step, the address of a place outside', async () => {
  const found = await bench(exampleWorkspace(guide));
  const { code, out } = await found.build();
  expect([code, out]).toEqual([0, expect.stringContaining('no errors')]);
  const page = await found.page('guides/example/index.html');
  const printed = '<span class="printed"> (step <span data-step="free">1</span>)</span></a>';
  expect(page).toContain(`<a href="#free">step before${printed}`);
  expect(page).toContain(`<a href="#free">the place${printed}`);
  expect(page).toContain('<a href="https://example.org/maker" rel="noreferrer">the data page</a>');
  expect(page).toContain('rel="noreferrer" class="bare">https://example.org/covers</a>');
});

it('a heading over steps of other builds alone goes with them', async () => {
  const found = await bench(exampleWorkspace(guide));
  await found.build();
  const page = await found.page('guides/example/index.html');
  expect(page).toMatch(/<section class="part" id="extra" aria-labelledby="extra_title" data-plans="0">/);
  expect(page).toMatch(/<section class="part" id="off" aria-labelledby="off_title">/);
});

it('a platform lists its parts where they are declared, each with the guides that handle it', async () => {
  const platform = `---
title: Example van
options:
  fog: Front fog lamps
---

A van.

## Shared parts {#parts}

::part[Headlining]{#headlining}
::part[Roof panel]{#roof}
::part[Roof rail]{#rail length="3 mm"}
`;
  const work =
    '::none{of=tools}\n::part{#headlining}\n::part{#rail}\n::kit[Eye bolt]{#eye-bolt thread=M8 grade=8.8 length="12 mm" stack=rail}\n\n::step[Lower it]{#lower}\n\n:remove[headlining]. :fit[eye-bolt]. :refit[headlining].\n';
  const found = await bench(
    exampleWorkspace({ 'platforms/example-van.md': platform, 'example/guide.md': work }),
  );
  const { code, out } = await found.build();
  expect([code, out]).toEqual([0, expect.stringContaining('no errors')]);
  const page = await found.page('platforms/example-van/index.html');
  const shared = page.slice(page.indexOf('id="parts"'));
  expect(shared).toContain(
    '<th scope="row">Headlining</th><td><a href="../../guides/example/index.html#item_headlining">Example guide</a></td>',
  );
  expect(shared).toContain('<th scope="row">Roof panel</th><td>no guide yet</td>');
  // A bolt through a part is work on it, though no action names the part.
  expect(shared).toContain(
    '<th scope="row">Roof rail</th><td><a href="../../guides/example/index.html#item_eye-bolt">Example guide</a></td>',
  );
  expect(await found.page('guides/example/index.html')).toContain('id="item_headlining"');
});
