import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { bench, repository } from '../driver.ts';
import { sampleOf } from '../samples.ts';

const demo = join(repository, 'guides');
const lampCradle = readFileSync(join(demo, 'lamp-cradle/guide.md'), 'utf8');
const tools = [...lampCradle.matchAll(/^::tool\{#([a-z0-9-]+)\}\n/gm)].map(
  ([line, id = '']) => [id, line] as const,
);

describe('the demo', () => {
  it('has nothing to find', async () => {
    const { check } = await bench(demo);
    expect(await check()).toMatchObject({
      code: 0,
      out: expect.stringMatching(
        /^(guides\/\S+: “.*”\n( {2}.*\n)+\n)*\d+ guides? checked: no errors, no warnings\n$/,
      ),
    });
  });

  it.each(sampleOf(tools, 2))('misses the declaration of %s', async (id, line) => {
    const { change, check } = await bench(demo);
    await change('lamp-cradle/guide.md', line, '');
    const { code, out } = await check();
    expect(code).toBe(1);
    expect(out).toMatch(/^guides\/lamp-cradle\/guide\.md:\d+:\d+: error tool-undeclared\n {2}the /m);
    expect(out).toContain(`names the tool "${id}", which this guide does not declare`);
    expect(out).toContain(`the tool crib has it: declare it with ::tool{#${id}} (guides/tools.yaml:`);
    expect(out).toMatch(/\n\d+ guides? checked: 1 error, no warnings\n$/);
  });
});
