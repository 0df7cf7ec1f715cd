import { expect, it } from 'vitest';
import { readAloud } from '../../src/pages/steps/read-aloud.ts';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import { noStore } from '../../src/store/store.ts';
import { told } from '../checks/told.ts';
import { exampleWorkspace } from '../example-workspace.ts';

const text = (attributes: string, verb = 'discard') =>
  `::part[Old seal]{#seal}\n\n::step[Take the seal off]{#off}\n\n:remove[seal] and :${verb}[seal]${attributes}.\n`;

it('says where what is discarded goes', async () => {
  const written = text('{to="the bin for hazardous waste"}');
  expect(await told(written)).toEqual([]);
  const { guides } = await inspect(memoryFiles(exampleWorkspace(written)), noStore);
  const [one] = guides;
  const plan = one?.job.plans[0];
  if (!one || !plan) throw new Error('no guide');
  expect(readAloud(one.guide, plan)).toContain('discard the old seal to the bin for hazardous waste.');
  expect(await told(text(''))).toEqual([]);
});

it('is said of what is discarded, and of nothing else', async () => {
  const found = await told(text('{to="the owner"}', 'hand-over'));
  expect(found.map((line) => line.split(':')[0])).toEqual(['attribute-unknown']);
});
