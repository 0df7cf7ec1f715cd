import { hostname } from 'node:os';
import { expect, it } from 'vitest';
import { exampleWorkspace } from '../example-workspace.ts';
import { long } from '../samples.ts';
import { programBench } from './program-bench.ts';

const workspace = (text: string) => exampleWorkspace(`::step[Look around]{#look}\n\n${text}\n`);
const states = [workspace('Look behind the edge.'), workspace('Look below the edge.')];

/** What the one that came second says of the other. */
const refused = new RegExp(
  `^nothing was published: another build \\(process (\\d+) on ${hostname().replace(/\W/g, '\\$&')}\\) has been writing to the output folder for \\d+ s; wait until it is done, or delete \\.baybook-lock there if it no longer runs\\n$`,
);

it.runIf(long)(
  'of fifty pairs of whole programs at once, one publishes and the other says in a sentence who does',
  { timeout: 3_600_000 },
  async () => {
    const { have, build, taken, site, remnants } = await programBench();
    const full = [];
    for (const files of states) {
      await have(files);
      expect(await build('store')).toMatchObject({ code: 0 });
      full.push(await site());
    }
    expect(full[0]).not.toEqual(full[1]);
    // On a busy machine one may be done before the other begins: that is no pair.
    for (let [met, turn] = [0, 0]; met < 50; turn += 1) {
      await have(states[turn % 2] ?? {});
      const first = build('store');
      // Every other time both begin in the same moment.
      if (turn % 4 < 2) await taken();
      const both = await Promise.all([first, build('store')]);
      expect(await site()).toEqual(full[turn % 2]);
      expect(await remnants()).toEqual([]);
      const [winner, loser] = both.sort((a, b) => Number(a.code) - Number(b.code));
      expect(winner?.code).toBe(0);
      if (loser?.code === 0) continue;
      expect(loser?.code).toBe(1);
      expect(loser?.said).toMatch(refused);
      expect(refused.exec(loser?.said ?? '')?.[1]).toBe(String(winner?.process));
      met += 1;
    }
  },
);
