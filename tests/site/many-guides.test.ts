import { expect, it } from 'vitest';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import { assembleSite } from '../../src/site/assemble.ts';
import { KEPT_UNASKED } from '../../src/site/device/parcels.ts';
import { readFonts } from '../../src/site/fonts.ts';
import { readKit } from '../../src/site/kit.ts';
import { memoryStore } from '../../src/store/store.ts';
import { corpus } from '../bench/corpus.ts';
import { long } from '../samples.ts';
import { publicationFor } from './build.ts';

/** A shop that has grown for years: all of its guides are for one platform, and use the same tools and fasteners. */
it.runIf(long)(
  'pages about all guides are made, however many these are',
  async () => {
    const files = memoryFiles(Object.fromEntries(corpus(4)));
    const few = publicationFor(await inspect(files));
    const many = Array.from({ length: 4000 }, (_, index) => {
      const summary = few.summaries[index % few.summaries.length];
      if (!summary) throw new Error('the shop has no guide');
      return { ...summary, id: `job-${index}`, title: `${summary.title}, ${index}` };
    });
    const kit = await readKit(files, few.shop.files.keys(), await readFonts());
    const ground = {
      files,
      shown: files,
      store: memoryStore(),
      kit,
      basis: '',
      pageOf: () => null,
      keptUnasked: KEPT_UNASKED,
    };
    const { problems } = await assembleSite({ ...few, summaries: many }, ground);
    // The pages of the guides themselves are not made here, so that links to them lead nowhere.
    expect(problems.filter((one) => !one.includes('which leads nowhere'))).toEqual([]);
  },
  300_000,
);
