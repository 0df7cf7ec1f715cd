import { expect, it } from 'vitest';
import { guidePage } from '../../src/pages/guide/guide-page.ts';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import { noStore } from '../../src/store/store.ts';
import { exampleWorkspace } from '../example-workspace.ts';
import { page } from './render.ts';

async function detailOf(attributes: string) {
  const text = `::supply[Sealant]{#sealant ${attributes}}\n\n::step[Seal it]{#seal}\n\n:apply[sealant] along the edge.\n`;
  const { guides } = await inspect(memoryFiles(exampleWorkspace(text)), noStore);
  const [one] = guides;
  if (!one) throw new Error('no guide');
  const { sections } = guidePage(one.guide, one.job, page());
  const [row] = sections.flatMap(({ gather }) => gather?.supplies ?? []);
  return row?.detail?.replaceAll(/[\u00a0\u202f]/g, ' ') ?? null;
}

it('says how many whole packages are fetched', async () => {
  expect(await detailOf('quantity="650 ml" pack="310 ml"')).toMatch(/^3 packs of 310 ml/);
  expect(await detailOf('quantity="620 ml" pack="310 ml"')).toMatch(/^2 packs of 310 ml/);
  expect(await detailOf('quantity="50 ml" pack="0.31 l"')).toMatch(/^1 pack of /);
  // A length of tape out of packages by volume cannot be reckoned.
  expect(await detailOf('quantity="2 m" pack="310 ml"')).toMatch(/^in packs of 310 ml/);
  expect(await detailOf('quantity="2 m"')).toBe(null);
});
