import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { bench } from '../driver.ts';
import { exampleWorkspace } from '../example-workspace.ts';

const look = '::step[Look around]{#look}\n\nLook behind the edge.\n';
const sound = exampleWorkspace(look);
const guide = sound['example/guide.md'] ?? '';

describe('build', () => {
  it('publishes a site that opens at index.html, and says what it wrote', async () => {
    const { build, page, site } = await bench(sound);
    const { code, out, err } = await build();
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(
      /^1 guide checked: no errors, no warnings\nsite: \d+ files, \d+ new or changed, 0 removed\n$/,
    );
    expect(await page('index.html')).toContain('Example guide');
    const paths = [...(await site()).keys()];
    expect(paths.filter((path) => path.endsWith('.html')).length).toBeGreaterThan(2);
  });

  it('writes nothing where nothing has changed', async () => {
    const { build } = await bench(sound);
    await build();
    expect((await build()).out).toMatch(/ files, 0 new or changed, 0 removed\n$/);
  });

  it('is refused in a sentence while another is at work on the same site, and that one publishes', async () => {
    const { build, page } = await bench(sound);
    const [first, second] = await Promise.all([build(), build()]);
    expect([first, second].map(({ code }) => code).sort()).toEqual([0, 1]);
    expect(first.code === 1 ? first : second).toMatchObject({
      out: '',
      err: expect.stringMatching(
        /^nothing was published: another build \(process \d+ on .+\) has been writing to the output folder for \d+ s; wait until it is done, or delete \.baybook-lock there if it no longer runs\n$/,
      ),
    });
    expect(await page('index.html')).toContain('Example guide');
    expect((await build()).out).toMatch(/ files, 0 new or changed, 0 removed\n$/);
  });

  it('leaves the last good site untouched where a guide has an error', async () => {
    const { build, change, site } = await bench(sound);
    await build();
    const before = await site();
    await change('example/guide.md', 'Look behind', 'Look with the :tool[lamp] behind');
    const { code, out } = await build();
    expect(code).toBe(1);
    expect(out).toMatch(/nothing was published: the guides have faults, and the last site stays as it is\n$/);
    expect(await site()).toEqual(before);
  });

  it('says which file stops all guides', async () => {
    const { build } = await bench({ ...sound, 'shop.yaml': 'nme: x\n' });
    const { out } = await build('--keep-going');
    expect(out).toMatch(
      /nothing was published: every guide depends on "shop.yaml", which must be mended first\n$/,
    );
  });

  it('makes no output folder where it publishes nothing', async () => {
    const { build, site } = await bench({ ...sound, 'shop.yaml': 'nme: x\n' });
    expect((await build('--keep-going')).code).toBe(1);
    expect((await site()).size).toBe(0);
  });

  it('publishes the sound guides on request, and still answers 1', async () => {
    const { build, site } = await bench({
      ...sound,
      'bad/guide.md': guide.replace('Look behind', 'Look with the :tool[lamp] behind'),
    });
    expect((await build()).code).toBe(1);
    expect((await site()).size).toBe(0);
    const { code, out } = await build('--keep-going');
    expect(code).toBe(1);
    expect(out).toMatch(/\nsite: \d+ files/);
    const paths = [...(await site()).keys()].join('\n');
    expect(paths).toContain('guides/example/index.html');
    expect(paths).not.toContain('guides/bad/');
  });

  it('counts warnings as errors on request', async () => {
    const { build, site } = await bench(exampleWorkspace(`::tool[Lamp]{#lamp}\n\n${look}`));
    expect((await build('--strict')).code).toBe(1);
    expect((await site()).size).toBe(0);
    expect((await build()).code).toBe(0);
  });

  it('never removes what it has not written', async () => {
    const { build, folder, page } = await bench(sound);
    await mkdir(join(folder, 'site'));
    await writeFile(join(folder, 'site/notes.txt'), 'mine');
    await build();
    await build();
    expect(await page('notes.txt')).toBe('mine');
  });

  it('gives the same bytes in another folder', async () => {
    const [first, second] = [await bench(sound), await bench(sound)];
    await first.build();
    await second.build();
    expect(await second.site()).toEqual(await first.site());
  });

  it('prints findings alone in a format for programs', async () => {
    const { build } = await bench(sound);
    expect(JSON.parse((await build('--format', 'json')).out)).toMatchObject({ errors: 0, guides: 1 });
  });
});
