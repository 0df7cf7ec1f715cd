import { expect, it } from 'vitest';
import { bench } from '../driver.ts';
import { exampleWorkspace } from '../example-workspace.ts';

const guide = (count: string) => `::tool[Trim lever]{#lever${count}}
::tool[Wedge]{#wedge}
::part[Arch trim]{#trim side=each}

::step[Ease off the trim]{#off side=each time="10 min"}

:remove[trim]{with=lever}.

::step[Look behind]{#look time="5 min"}

Look behind the edge, and hold the :tool[wedge] ready.

::step[Refit the trim]{#on side=each time="10 min"}

:refit[trim]{with=lever}.
`;

/** How many of each tool the gather list asks for, and what it says of a second technician. */
async function gathered(count: string) {
  const found = await bench(exampleWorkspace(guide(count)));
  expect(await found.build()).toMatchObject({ code: 0 });
  const page = await found.page('guides/example/index.html');
  const rows = [...page.matchAll(/Trim lever.*?<\/tr>/gs)].map(([row]) => row.replace(/<[^>]+>/g, ' '));
  const json = JSON.parse(await found.page('guides/example/guide.json'));
  return {
    list: rows[0]?.includes('2, to work side by side'),
    elapsed: json.plans[0].schedules.map(({ elapsed }: { elapsed: { mean: number } }) => elapsed.mean),
    atOnce: json.plans[0].gather.tools.map(({ atOnce }: { atOnce: number }) => atOnce),
  };
}

it('one lever keeps two technicians from working on both sides at once', async () => {
  expect(await gathered('')).toEqual({ list: false, elapsed: [45, 45], atOnce: [1, 1] });
});

it('two levers are asked for where two technicians use them side by side', async () => {
  expect(await gathered(' count=2')).toEqual({ list: true, elapsed: [45, 25], atOnce: [2, 1] });
});
