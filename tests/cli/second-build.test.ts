import { join } from 'node:path';
import { expect, it } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { bench, repository } from '../driver.ts';
import { pictureStore } from '../picture-store.ts';
import { long } from '../samples.ts';

/** In each run those guides are left out that have nothing of which the others do not have the like. */
const likeOthers = [
  'crash-bar',
  'depth-transducer',
  'flush-sensors',
  'lamp-cradle',
  'switch-panel',
  'swivel-seat',
];

it('does no work the second time, and writes nothing', async () => {
  const { folder, remove } = await bench(join(repository, 'guides'));
  if (!long) for (const guide of likeOthers) await remove(guide);
  const kept = new Map<string, Uint8Array>();
  // The first build is of no matter here: it is given what is made of its photographs.
  const pictures = await pictureStore();
  let out = '';
  const build = async () => {
    out = '';
    const before = kept.size;
    const derived: string[] = [];
    const code = await run(['build'], {
      out: (text) => {
        out += text;
      },
      err: () => undefined,
      cwd: folder,
      width: 100,
      colour: false,
      watched: false,
      ask: null,
      threads: 1,
      store: {
        place: null,
        read: (name) => kept.get(name) ?? pictures.read(name),
        // Whatever is derived is kept, so that what is kept tells what was derived.
        write: (name, bytes) => {
          // What is known of the times of files is written down in each run.
          if (!name.startsWith('seen-')) derived.push(name);
          kept.set(name, bytes);
          return true;
        },
        prune: () => undefined,
      },
    });
    return { code, derived: derived.length, more: kept.size - before };
  };
  const first = await build();
  expect(first.code).toBe(0);
  expect(first.more).toBeGreaterThan(10);
  expect(await build()).toEqual({ code: 0, derived: 0, more: 0 });
  expect(out).toMatch(/\nsite: \d+ files, 0 new or changed, 0 removed\n$/);
}, 240_000);
