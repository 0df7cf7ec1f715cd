import { cp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { memoryStore } from '../../src/store/store.ts';
import { type Bench, baybook, bench } from '../driver.ts';
import { exampleWorkspace } from '../example-workspace.ts';

const sound = exampleWorkspace('::step[Look around]{#look}\n\nLook behind the edge.\n');
const guide = sound['example/guide.md'] ?? '';
const more = Object.fromEntries(
  ['a', 'b'].map((id) => [`${id}/guide.md`, guide.replace('Example guide', `Guide ${id}`)]),
);

/** A workspace of three guides, of which one links to another. */
async function shop(): Promise<Bench> {
  const link = `${guide}\nSee [the other](../a/guide.md).\n`;
  return bench({ ...sound, ...more, 'b/guide.md': link.replace('Example guide', 'Guide b') });
}

async function shards({ build }: Bench, of: number): Promise<readonly string[]> {
  const names = Array.from({ length: of }, (_, index) => `shard-${index + 1}-of-${of}`);
  for (const [index, name] of names.entries()) {
    const { code, out } = await build('--shard', `${index + 1}/${of}`);
    expect(code).toBe(0);
    expect(out).toMatch(new RegExp(`no errors, no warnings\n${name}: part ${index + 1} of ${of}\n$`));
  }
  return names;
}

/** Merges on a machine that has worked on nothing before; tells which guides it had to work out itself. */
function mergeElsewhere(cwd: string, ...shards: readonly string[]) {
  return runElsewhere(cwd, 'merge', ...shards);
}

async function runElsewhere(cwd: string, ...words: readonly string[]) {
  const answer = { out: '', err: '', workedOut: 0 };
  const store = memoryStore();
  const code = await run([...words], {
    out: (text) => {
      answer.out += text;
    },
    err: (text) => {
      answer.err += text;
    },
    ...{ cwd, width: 100, colour: false, watched: false, ask: null, threads: 1 },
    store: {
      ...store,
      write: (name, bytes) => {
        if (name.startsWith('guide-')) answer.workedOut += 1;
        return store.write(name, bytes);
      },
    },
  });
  return { code, ...answer };
}

describe('shards', () => {
  it('give, merged, the bytes of a single build, on a machine that has seen none of the guides', async () => {
    const one = await shop();
    await one.build();
    const whole = await one.site();
    const names = await shards(one, 3);
    const other = await shop();
    for (const name of names) await cp(join(one.folder, name), join(other.folder, name), { recursive: true });
    const { code, err, out, workedOut } = await mergeElsewhere(other.folder, ...[...names].reverse());
    expect({ code, err, workedOut }).toEqual({ code: 0, err: '', workedOut: 0 });
    expect(out).toContain('3 guides checked: no errors, no warnings');
    expect(await other.site()).toEqual(whole);
  });

  it('are refused where one is missing, doubled, of another number, unfinished, damaged or no shard', async () => {
    const desk = await shop();
    const names = await shards(desk, 3);
    await desk.build('--shard', '2/2');
    const merge = async (...given: string[]) => (await baybook(desk.folder, 'merge', ...given)).err;
    expect(await merge('shard-1-of-3')).toBe('nothing was published: of 3 parts, 2, 3 are missing\n');
    await cp(join(desk.folder, 'shard-1-of-3'), join(desk.folder, 'again'), { recursive: true });
    expect(await merge(...names, 'again')).toBe(
      'nothing was published: "shard-1-of-3" and "again" are the same part, 1 of 3\n',
    );
    expect(await merge('shard-1-of-3', 'shard-2-of-2')).toBe(
      'nothing was published: "shard-1-of-3" is one of 3 parts, and "shard-2-of-2" one of 2\n',
    );
    expect(await merge('guides')).toBe('nothing was published: "guides" is no shard of this Baybook\n');
    const note = join(desk.folder, 'again/shard.json');
    await writeFile(note, (await readFile(note, 'utf8')).replace(/"state":"\w+"/, '"state":null'));
    expect(await merge('again')).toBe('nothing was published: "again" was not finished; make it again\n');
    expect(await desk.site()).toEqual(new Map());
  });

  it('are refused where the workspace has changed since', async () => {
    const desk = await shop();
    const names = await shards(desk, 2);
    await desk.change('a/guide.md', 'behind', 'below');
    const { code, err } = await baybook(desk.folder, 'merge', ...names);
    expect(code).toBe(1);
    expect(err).toContain('"shard-1-of-2" was made from other files');
  });

  it('tell the faults of their own guides, and the merge those of all, and what lies between them', async () => {
    const desk = await shop();
    await desk.change('b/guide.md', 'Look behind', 'Look with the :tool[lamp] behind');
    const codes = [await desk.build('--shard', '1/2'), await desk.build('--shard', '2/2')].map(
      ({ code }) => code,
    );
    expect(codes.sort()).toEqual([0, 1]);
    const { code, out } = await baybook(desk.folder, 'merge', 'shard-1-of-2', 'shard-2-of-2');
    expect(code).toBe(1);
    expect(out).toContain('b/guide.md');
    expect(await desk.site()).toEqual(new Map());
  });

  it('cost time and nothing else where some of their work is lost', async () => {
    const desk = await shop();
    await desk.build();
    const whole = await desk.site();
    await rm(join(desk.folder, 'site'), { recursive: true });
    const names = await shards(desk, 1);
    const entries = await readdir(join(desk.folder, 'shard-1-of-1'));
    for (const entry of entries.filter((one) => one.startsWith('guide-'))) {
      await writeFile(join(desk.folder, 'shard-1-of-1', entry), 'damaged');
    }
    expect(await mergeElsewhere(desk.folder, ...names)).toMatchObject({ code: 0, workedOut: 3 });
    expect(await desk.site()).toEqual(whole);
  });

  it('of one guide each, worked out with nothing but the guide and what all share, spare a build all but what has changed', async () => {
    const { 'example/guide.md': _, ...shared } = sound;
    const parts: string[] = [];
    for (const id of ['example', 'a', 'b']) {
      const text = id === 'example' ? guide : (more[`${id}/guide.md`] ?? '');
      const alone = await bench({ ...shared, [`${id}/guide.md`]: text });
      expect(await alone.build('--shard', '1/1')).toMatchObject({ code: 0 });
      parts.push(join(alone.folder, 'shard-1-of-1'));
    }
    const other = await bench({ ...sound, ...more });
    expect(await runElsewhere(other.folder, 'build', '--reuse', ...parts)).toMatchObject({
      code: 0,
      workedOut: 0,
    });
    const same = await bench({ ...sound, ...more });
    await same.build();
    expect(await other.site()).toEqual(await same.site());
    await other.change('a/guide.md', 'behind', 'below');
    expect(await runElsewhere(other.folder, 'build', '--reuse', ...parts)).toMatchObject({
      code: 0,
      workedOut: 1,
    });
    expect(await runElsewhere(other.folder, 'build', '--reuse', 'guides')).toMatchObject({
      code: 2,
      err: 'baybook: "guides" is no shard of this Baybook\n',
    });
  });

  it('take no folder in which something else lies, and no number that is no part', async () => {
    const { folder, build } = await shop();
    await writeFile(join(folder, 'mine'), '');
    expect(await build('--shard', '1/2', '--out', '.')).toMatchObject({ code: 2 });
    for (const part of ['0/2', '3/2', '1', 'x/2', '1/0'])
      expect(await build('--shard', part)).toMatchObject({
        code: 2,
        err: expect.stringContaining('is no part'),
      });
  });
});
