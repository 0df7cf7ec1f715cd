import { cp, mkdtemp, readFile, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { describe, expect, it, onTestFinished } from 'vitest';
import { parse } from 'yaml';
import * as z from 'zod';
import { type Bench, baybook, bench, repository } from '../driver.ts';
import { exampleWorkspace } from '../example-workspace.ts';
import { long } from '../samples.ts';

/** What the plan uses of a workflow, to be read here; the service's own parser holds it to the whole syntax. */
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

async function planText(): Promise<string> {
  const chapter = await readFile(join(repository, 'handbook/machines.md'), 'utf8');
  return /^```yaml \S+\n([\s\S]*?)^```$/m.exec(chapter)?.[1] ?? '';
}

async function plan() {
  return workflow.parse(parse(await planText())).jobs;
}

describe('the plan for a service in the handbook', () => {
  /**
   * The faults that the service finds in a plan before it runs it, by the parser that it publishes for editors
   * (`@actions/workflow-parser`). As it is published, bundlers alone can load it.
   */
  async function serviceParser(): Promise<(text: string) => Promise<readonly string[]>> {
    const folder = await mkdtemp(join(tmpdir(), 'baybook parser '));
    onTestFinished(() => rm(folder, { recursive: true, force: true }));
    const outfile = join(folder, 'parser.cjs');
    const stdin = { contents: 'export * from "@actions/workflow-parser"', resolveDir: repository };
    await build({ stdin, outfile, bundle: true, platform: 'node', format: 'cjs', logLevel: 'silent' });
    const parser: typeof import('@actions/workflow-parser') = createRequire(import.meta.url)(outfile);
    return async (content) => {
      const { context, value } = parser.parseWorkflow(
        { name: 'site.yml', content },
        new parser.NoOperationTraceWriter(),
      );
      if (value) await parser.convertWorkflowTemplate(context, value);
      return context.errors.getErrors().map(({ message }) => message);
    };
  }

  it('has no fault for the service’s own parser, which finds what is planted in it', async () => {
    const [text, faultsOf] = [await planText(), await serviceParser()];
    expect(await faultsOf(text)).toEqual([]);
    for (const [from, to, fault] of [
      ['runs-on', 'run-on', /Unexpected value 'run-on'/],
      ['needs: part', 'needs: parts', /depends on unknown job 'parts'/],
      ['part: [1, 2, 3, 4]', 'part: 4', /Unexpected value '4'/],
      ['matrix.part }}/4', 'matrx.part }}/4', /Unrecognized named-value: 'matrx'/],
      ['branches:', 'branch:', /Unexpected value 'branch'/],
    ] as const) {
      expect(text).toContain(from);
      expect((await faultsOf(text.replace(from, to))).join('\n')).toMatch(fault);
    }
  });

  it('has a job for each part that is merged', async () => {
    const { part, site } = await plan();
    expect(part.strategy.matrix.part).toEqual([1, 2, 3, 4]);
    const merge = site.steps.flatMap((one) => ('run' in one ? [one.run] : [])).at(-1);
    const shards = part.strategy.matrix.part.map((number) => `shard-${number}-of-4`);
    expect(merge).toBe(`npx baybook merge ${shards.join(' ')}`);
  });
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
