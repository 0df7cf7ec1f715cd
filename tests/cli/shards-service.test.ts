import { cp, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { type Bench, baybook, bench, repository } from '../driver.ts';
import { exampleWorkspace } from '../example-workspace.ts';
import { long } from '../samples.ts';

/** What the plan uses of a workflow, by its published syntax; any other key would be a slip. */
const step = z.union([
  z.strictObject({ run: z.string() }),
  z.strictObject({
    uses: z.enum(['actions/checkout@v4', 'actions/setup-node@v4', 'actions/download-artifact@v4']),
    with: z.strictObject({ 'node-version': z.string(), cache: z.literal('npm') }).optional(),
  }),
  z.strictObject({
    uses: z.literal('actions/cache@v4'),
    with: z.strictObject({ path: z.string(), key: z.string(), 'restore-keys': z.string() }),
  }),
  z.strictObject({
    uses: z.literal('actions/upload-artifact@v4'),
    with: z.strictObject({ name: z.string(), path: z.string() }),
  }),
]);
const job = { 'runs-on': z.string(), steps: z.array(step) };
const workflow = z.strictObject({
  name: z.string(),
  on: z.strictObject({ push: z.strictObject({ branches: z.array(z.string()) }) }),
  jobs: z.strictObject({
    part: z.strictObject({
      ...job,
      strategy: z.strictObject({ matrix: z.strictObject({ part: z.array(z.number()) }) }),
    }),
    site: z.strictObject({ ...job, needs: z.literal('part') }),
  }),
});

async function plan() {
  const chapter = await readFile(join(repository, 'handbook/machines.md'), 'utf8');
  const [, text = ''] = /^```yaml \S+\n([\s\S]*?)^```$/m.exec(chapter) ?? [];
  return workflow.parse(parse(text)).jobs;
}

it('the plan for a service in the handbook has the shape of one', async () => {
  const { part } = await plan();
  expect(part.strategy.matrix.part).toEqual([1, 2, 3, 4]);
});

it.runIf(long)(
  'the plan for a service in the handbook, done by its own lines, twice, makes the site of one build',
  { timeout: 600_000 },
  async () => {
    const { part, site } = await plan();
    const keep = await mkdtemp(join(tmpdir(), 'baybook service '));
    onTestFinished(() => rm(keep, { recursive: true, force: true }));
    const guide =
      exampleWorkspace('::step[Look around]{#look}\n\nLook behind the edge.\n')['example/guide.md'] ?? '';
    const files = exampleWorkspace({
      'example/guide.md': guide,
      ...Object.fromEntries(
        ['a', 'b', 'c', 'd', 'e'].map((id) => [
          `${id}/guide.md`,
          guide.replace('Example guide', `Guide ${id}`),
        ]),
      ),
    });
    const fetched = () => bench(files);
    const whole = await fetched();
    await whole.build();

    /** One job in a folder of its own; what it keeps, and hands on, lies in `keep`. */
    async function run(steps: readonly z.infer<typeof step>[], number: number): Promise<Bench> {
      const at = await fetched();
      const filled = (text: string) => text.replace(/\$\{\{ matrix\.part \}\}/g, String(number));
      const cached: string[] = [];
      for (const one of steps) {
        if ('run' in one) {
          // Baybook is here already.
          if (one.run === 'npm ci') continue;
          const [npx, name, ...words] = filled(one.run).split(' ');
          expect([npx, name]).toEqual(['npx', 'baybook']);
          expect(await baybook(at.folder, ...words)).toMatchObject({ code: 0, err: '' });
        } else if (one.uses === 'actions/cache@v4') {
          const path = filled(one.with.path);
          cached.push(path);
          await cp(join(keep, 'cache', path), join(at.folder, path), { recursive: true }).catch(
            () => undefined,
          );
        } else if (one.uses === 'actions/upload-artifact@v4') {
          const { name, path } = one.with;
          await cp(join(at.folder, filled(path)), join(keep, 'handed', filled(name)), { recursive: true });
        } else if (one.uses === 'actions/download-artifact@v4') {
          await cp(join(keep, 'handed'), at.folder, { recursive: true });
        }
      }
      for (const path of cached)
        await cp(join(at.folder, path), join(keep, 'cache', path), { recursive: true });
      return at;
    }

    for (const round of [1, 2]) {
      for (const number of part.strategy.matrix.part) await run(part.steps, number);
      const at = await run(site.steps, 0);
      expect(await at.site(), `round ${round}`).toEqual(await whole.site());
      await rm(join(keep, 'handed'), { recursive: true });
    }
  },
);
