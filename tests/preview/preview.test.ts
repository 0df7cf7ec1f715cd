import { readdir, rename } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { editedPlace } from '../../src/preview/edited-place.ts';
import { baybook } from '../driver.ts';
import { randomWorkspace } from '../visit/random-guides.ts';
import { openPreview } from './open-preview.ts';

const page = 'guides/lamp-cradle/index.html';
const guide = 'lamp-cradle/guide.md';

describe('a page under the pen', () => {
  it('follows each save at the step that was edited, and keeps the last good page over a fault', async () => {
    const { ask, listen, change, write, folder } = await openPreview();
    const first = await ask(`/${page}`);
    expect(first.status).toBe(200);
    const edition = /data-edition="([^"]+)"/.exec(first.body)?.[1];
    const heard = await listen(page);
    expect(await heard.next(() => true)).toMatchObject({ edition, place: null, errors: 0, told: '' });

    await change(guide, 'Ease it 100 mm forward.', 'Ease it 120 mm forward.');
    const saved = await heard.next((news) => news.edition !== edition);
    expect(saved).toMatchObject({ place: 'cover-off', errors: 0 });
    expect((await ask(`/${page}`)).body).toContain('Ease it 120\u00a0mm forward.');

    await change(guide, 'Work the :tool[trim-lever]', 'Work the :tool[trim-lover]');
    const faulty = await heard.next(({ errors }) => errors > 0);
    expect(faulty).toMatchObject({ edition: saved.edition, place: 'arch' });
    expect(faulty.told).toContain('lamp-cradle/guide.md:');
    expect(faulty.told).toContain('likely mend: write trim-lever');
    expect((await ask(`/${page}`)).body).toContain('Ease it 120\u00a0mm forward.');

    await change(guide, 'trim-lover', 'trim-lever');
    expect(await heard.next(({ errors }) => errors === 0)).toMatchObject({
      edition: saved.edition,
      told: '',
    });

    // A file that is written in two halves, and one that goes and comes back.
    await write(guide, '---\ntitle: Lamp cradle\n');
    expect((await heard.next(({ errors }) => errors > 0)).edition).toBe(saved.edition);
    await rename(join(folder, 'guides', guide), join(folder, 'guides/lamp-cradle/old.txt'));
    const gone = await heard.next(({ told }) => told.includes('is not there'));
    expect(gone.told).toBe(`${guide} is not there; it was renamed or taken away`);
    expect((await ask(`/${page}`)).status).toBe(200);
    expect(await readdir(folder)).toEqual(['guides']);
  });

  it('shows what is wrong with a guide that never had a page, and the page once it is mended', async () => {
    const { ask, listen, change } = await openPreview();
    await change(guide, '::tool{#trim-lever}\n', '');
    const heard = await listen(page);
    await heard.next(({ errors, edition }) => errors > 0 && edition === null);
    expect((await ask(`/${page}`)).body).toContain('This guide has no good page yet.');
    await change(guide, '::tool{#bit-t15}\n', '::tool{#trim-lever}\n::tool{#bit-t15}\n');
    await heard.next(({ edition }) => edition !== null);
    expect((await ask(`/${page}`)).body).toContain('Draw the cover forward');
  });

  it('shows a guide as it is when it is saved while its first page is made', async () => {
    const { ask, change } = await openPreview();
    const asked = ask(`/${page}`);
    await change(guide, 'Ease it 100 mm forward.', 'Ease it 120 mm forward.');
    await asked;
    await expect
      .poll(async () => (await ask(`/${page}`)).body, { timeout: 20_000 })
      .toContain('Ease it 120\u00a0mm forward.');
  });

  it('shows the other pages, the templates and the data, and changes with what guides share', async () => {
    const { ask, listen, change } = await openPreview();
    expect((await ask('/')).body).toContain(`<a href="/${page}">lamp-cradle</a>`);
    const heard = await listen(page);
    const before = await heard.next(() => true);
    const body = (await ask(`/${page}`)).body;
    const [sheet = ''] = /[\w/.-]+\.pdf/.exec(body) ?? [];
    expect((await ask(`/guides/lamp-cradle/${sheet}`)).type).toBe('application/pdf');
    // What the page only leads to is made when it is asked for, and follows the pen as the page does.
    const alone = '/guides/lamp-cradle/lamp-cradle.html';
    expect((await ask(alone)).body).toContain('Draw the cover forward');
    await change(guide, 'Draw the cover forward', 'Draw the cover out');
    await heard.next(({ edition }) => edition !== before.edition);
    expect((await ask(alone)).body).toContain('Draw the cover out');
    for (const name of ['guide.json', 'pick-list.csv', 'rehearsal.html', 'rehearsal.js'])
      expect((await ask(`/guides/lamp-cradle/${name}`)).status).toBe(200);
    expect((await ask('/assets/page.css')).type).toBe('text/css; charset=utf-8');
    expect((await ask('/index.html')).body).toContain('Auxiliary lamp cradle');
    await change('tools.yaml', 'Trim lever', 'Trim wedge');
    const after = await heard.next(({ edition }) => edition !== before.edition);
    expect(after.errors).toBe(0);
    expect((await ask(`/${page}`)).body).toContain('rim wedge');
  });
});

describe('a visit under the pen', () => {
  it('follows its own file and each of its guides, and no other guide', async () => {
    const booked =
      '---\ntitle: Lamp and mirror\nplatform: example-van\nguides: lamp mirror\n---\n\nA note.\n';
    const { ask, listen, change } = await openPreview({
      ...randomWorkspace(2, ['lamp', 'mirror', 'rack']),
      'visits/both.md': booked,
    });
    const both = 'visits/both/index.html';
    expect((await ask('/')).body).toContain(`<a href="/${both}">both</a>`);
    expect((await ask(`/${both}`)).body).toContain('A note.');
    const heard = await listen(both);
    const { edition } = await heard.next(() => true);
    await change('mirror/guide.md', 'Look at it with', 'Look hard at it with');
    const followed = await heard.next((news) => news.edition !== edition);
    expect((await ask(`/${both}`)).body).toContain('Look hard at it');
    await change('rack/guide.md', 'Look at it with', 'Look hard at it with');
    expect(await heard.next(() => true)).toMatchObject({ edition: followed.edition, errors: 0 });
    await change('visits/both.md', 'guides: lamp mirror', 'guides: lamp miror');
    const faulty = await heard.next(({ errors }) => errors > 0);
    expect(faulty.told).toContain('visits/both.md:');
    await change('visits/both.md', 'guides: lamp miror', 'guides: mirror rack');
    await heard.next(({ errors }) => errors === 0);
    expect((await ask(`/${both}`)).body).toContain('Look at the rack');
    expect((await ask('/index.html')).body).toContain('Lamp and mirror');
  });
});

describe('a preview', () => {
  it('answers nothing but the files of the site, and only under its own name', async () => {
    const { ask, preview } = await openPreview();
    for (const path of [
      '/../shop.yaml',
      '/%2e%2e/shop.yaml',
      '/..%2fshop.yaml',
      '/guides/lamp-cradle/guide.md',
      '/files/../../shop.yaml',
      '/shop.yaml',
      '//etc/passwd',
      '/%00',
      '/%zz',
    ])
      expect((await ask(path)).status, path).toBe(404);
    for (const host of ['evil.example', `evil.example:${preview.port}`, 'localhost', '127.0.0.1:1'])
      expect((await ask(`/${page}`, host)).status, host).toBe(421);
    expect((await ask(`/${page}`, `127.0.0.1:${preview.port}`)).status).toBe(200);
    expect((await ask(`/${page}`, undefined, 'POST')).status).toBe(405);
  });

  it('says in one line that its port is in use', async () => {
    const { folder, preview } = await openPreview();
    const { code, err } = await baybook(folder, 'preview', '--port', String(preview.port));
    expect({ code, err }).toEqual({
      code: 2,
      err: `baybook: port ${preview.port} is in use, maybe by another preview; --port names another\n`,
    });
  });
});

it('finds the place of an edit', () => {
  const text = '## Cut {#cut}\n\n::step[One]{#one}\n\nDo.\n\n::step[Two]{#two time="2 min"}\n\nDo.\n';
  expect(editedPlace(text, text)).toBeNull();
  expect(editedPlace(text, text.replace('Do.\n\n::', 'Do it.\n\n::'))).toBe('one');
  expect(editedPlace(text, text.replace('time="2 min"', 'time="3 min"'))).toBe('two');
  expect(editedPlace(text, `${text}\nMore.\n`)).toBe('two');
  expect(editedPlace(text, text.replace('## Cut', '## Cuts'))).toBe('cut');
  expect(editedPlace(text, `Before.\n${text}`)).toBeNull();
});
