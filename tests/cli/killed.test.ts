import { setTimeout as wait } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { exampleWorkspace } from '../example-workspace.ts';
import { long } from '../samples.ts';
import { programBench } from './program-bench.ts';

const look = '::step[Look around]{#look}\n\nLook behind the edge.\n';
const faulty = exampleWorkspace(look.replace('the edge', 'the :tool[lamp]'))['example/guide.md'] ?? '';

/** Two states of a workspace: a text changes, a guide goes and another comes. */
const old = workspace('Example van', 'gone');
const wanted = workspace('Another van', 'come');

function workspace(van: string, guide: string): { readonly [path: string]: string } {
  const { 'example/guide.md': text = '', ...shared } = exampleWorkspace(look);
  const platform = shared['platforms/example-van.md']?.replace('Example van', van) ?? '';
  return {
    ...shared,
    'platforms/example-van.md': platform,
    'stays/guide.md': text,
    [`${guide}/guide.md`]: text,
  };
}

// Each turn is three runs of the whole program; the switch itself is tried at each of its points in every run.
it.runIf(long)(
  'leaves, wherever a build was killed, the whole old or the whole new site after the next command',
  {
    timeout: 7_200_000,
  },
  async () => {
    const { have, build, site, remnants, forget } = await programBench();
    await have(old);
    const cold = (await build('store')).took;
    const before = await site();
    await have(wanted);
    await build('store');
    const after = await site();
    expect(after).not.toEqual(before);
    const warm = (await build('store')).took;
    await have(old);
    await build('store');

    const told = { kills: 0, old: 0, new: 0, waits: 0 };
    for (let turn = 0; told.kills < 200; turn += 1) {
      const [files, full] = turn % 2 === 0 ? [wanted, after] : [old, before];
      const stood = await site();
      // Work that has been done before leaves little but the writing to be cut; three of four are such.
      const store = turn % 4 === 3 ? 'new store' : 'store';
      await forget('new store');
      await have(files);
      const moment = (0.618034 * turn) % 1;
      const { killed } = await build(store, moment * (store === 'store' ? warm : cold));
      if (killed) told.kills += 1;
      // The next command publishes nothing, since a guide is faulty, and yet puts the folder in order.
      await have({ ...files, 'faulty/guide.md': faulty });
      let next = await build('store');
      // A lock without a name is left to its owner for ten seconds.
      if (next.said.includes('another build')) {
        told.waits += 1;
        await wait(11_000);
        next = await build('store');
      }
      expect(next.said).toContain('the guides have faults, and the last site stays as it is');
      const found = await site();
      expect([stood, full]).toContainEqual(found);
      expect(await remnants()).toEqual([]);
      told[found.get('worker.js') === full.get('worker.js') ? 'new' : 'old'] += 1;
      if (turn % 10 > 0) continue;
      await have(files);
      await build('store');
      expect(await site()).toEqual(full);
    }
    console.info(told);
  },
);
