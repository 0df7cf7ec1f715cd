import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { computeJob } from '../../src/job/compute-job.ts';
import type { Guide } from '../../src/model/guide.ts';
import * as fixture from '../pages/fixture.ts';
import { long } from '../samples.ts';
import { buildSite } from '../site/build.ts';
import { drawing, files, inspection } from '../site/workspace.ts';
import { chromiumOfWorker, isMissing } from './browser.ts';
import { type Host, startHost } from './host.ts';

const guide = 'guides/lamp-cradle/index.html';

// A browser on a busy machine takes its time; nothing here is about speed.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

let browser: Browser;
let top: string;
let host: Host;
let page: Page;

/** Two builds of one site: another title, another revision. */
const [old, newer] = ['old', 'newer'] as const;
const heavy = (build: string) => `heavy ${build}`;

/** With a picture before the first step: lists show the last one, which is kept for them. */
function seenFromAfar(guide: Guide): Guide {
  const blocks = guide.sections.flatMap(({ steps }) => steps.flatMap((step) => step.blocks));
  const afar = blocks.flatMap((block) =>
    block.type === 'figure' && block.src && block.alt
      ? [
          {
            ...block,
            path: 'lamp-cradle/pictures/afar.svg',
            src: { ...block.src, value: 'pictures/afar.svg' },
            alt: { ...block.alt, value: 'Seen from afar' },
            marks: [],
          },
        ]
      : [],
  );
  const sections = guide.sections.map((section) =>
    section.id === 'strip-down' ? { ...section, intro: [...section.intro, ...afar] } : section,
  );
  return { ...guide, sections };
}

beforeAll(async () => {
  top = await mkdtemp(join(tmpdir(), 'baybook '));
  for (const build of [old, newer]) {
    const at = fixture.guide.title.at;
    const edition = { ...fixture.titled(`The ${build} cradle`), revision: { value: build, at } };
    const outcome = await buildSite(inspection(edition, {}, computeJob(edition)), files(), join(top, build));
    if (!outcome.ok) throw new Error(outcome.problems.join('\n'));
    if (!long) continue;
    // The same guide with a second picture, as a shop with heavy photographs has it.
    const pictured = seenFromAfar(edition);
    const shown = inspection(pictured, {}, computeJob(pictured));
    const both = files({ 'lamp-cradle/pictures/afar.svg': drawing.replace('M20', 'M30') });
    const heavyOutcome = await buildSite(shown, both, join(top, heavy(build)), { keptUnasked: 0 });
    if (!heavyOutcome.ok) throw new Error(heavyOutcome.problems.join('\n'));
  }
  browser = await chromiumOfWorker();
});

afterAll(() => rm(top, { recursive: true, force: true }));

beforeEach(async () => {
  host = await startHost(join(top, old));
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  page = await context.newPage();
});

afterEach(async () => {
  await page.context().close();
  await host.stop();
});

const state = (which: 'active' | 'waiting' | 'installing') =>
  page.evaluate<string | null>(
    `navigator.serviceWorker.getRegistration().then((one) => one?.${which}?.state ?? null)`,
  );
const caches = () => page.evaluate<string[]>('caches.keys()');
const title = async (path: string) => {
  await page.goto(host.address + path);
  return page.locator('h1').textContent();
};

/** First visit, until the site is on the device. */
async function visit(): Promise<void> {
  await page.goto(`${host.address}index.html`);
  await expect.poll(() => state('active'), { timeout: 30_000 }).toBe('activated');
}

/** Looks for a newer build, and waits until the browser has it or has given it up. */
async function look(): Promise<void> {
  await page.evaluate(
    `navigator.serviceWorker.getRegistration().then((one) => one.update()).catch(() => {})`,
  );
  await expect.poll(() => state('installing'), { timeout: 30_000 }).toBeNull();
}

describe('a site on a host, below any path', () => {
  it('is whole on the device after one visit to its first page, with the network gone, and asked no other host', async () => {
    const hosts = new Set<string>();
    page.context().on('request', (request) => hosts.add(new URL(request.url()).origin));
    await visit();
    expect(await page.locator('.kept').textContent()).toContain('need no network');
    await host.stop();
    const faults: string[] = [];
    page.on('requestfailed', (request) => {
      if (isMissing(request)) faults.push(request.url());
    });
    page.on('pageerror', (error) => faults.push(String(error)));
    expect(await title(guide)).toBe('The old cradle');
    expect(await page.locator('.identity').textContent()).toContain('old');
    expect(await page.evaluate('[...document.images].every((image) => image.naturalWidth > 0)')).toBe(true);
    await page.locator('.bay-ticks input').first().check();
    await page.reload();
    expect(await page.locator('.bay-ticks input').first().isChecked()).toBe(true);
    expect(await title('')).toBe('Install guides');
    expect(await title('platforms/larkspur-dray/')).toContain('Larkspur');
    expect(faults).toEqual([]);
    await page.goto(`${host.address}guides/gone/index.html`);
    expect(await page.textContent('p')).toContain('not among the guides kept on this device');
    await page.goto(`${host.address}guides/lamp-cradle/lamp-cradle.html`);
    expect(await page.textContent('p')).toContain('not on this device');
    expect([...hosts]).toEqual([new URL(host.address).origin]);
  });

  it('is swapped whole for a newer build, when the technician says so', async () => {
    await visit();
    await page.goto(host.address + guide);
    host.serve.folder = join(top, newer);
    await look();
    expect(await page.locator('.newer').textContent()).toContain('A newer build of these guides is there');
    // Until then everything is of the old build, though the host has only the newer one.
    expect(await title(guide)).toBe('The old cradle');
    await page.goto(`${host.address}index.html`);
    expect(await page.locator('.shelf .entries').first().textContent()).toContain('The old cradle');
    await page.getByRole('button', { name: 'Show the newer one' }).click();
    await expect
      .poll(() => page.locator('.shelf .entries').first().textContent())
      .toContain('The newer cradle');
    expect(await title(guide)).toBe('The newer cradle');
    expect(await caches()).toHaveLength(1);
    await host.stop();
    expect(await title(guide)).toBe('The newer cradle');
  });

  it('stays the old build, whole, where a file of an update is another build’s, or the network dies half-way', async () => {
    await visit();
    host.serve.mixed = new Map([[guide, join(top, old)]]);
    host.serve.folder = join(top, newer);
    await look();
    expect(await state('waiting')).toBeNull();
    expect(await caches()).toHaveLength(1);
    expect(await title(guide)).toBe('The old cradle');
    host.serve.mixed = new Map();
    const before = host.asked.length;
    host.serve.left = 3;
    await look();
    expect(host.asked.length - before).toBeGreaterThan(3);
    expect(await state('waiting')).toBeNull();
    expect(await caches()).toHaveLength(1);
    expect(await title(guide)).toBe('The old cradle');
    expect(await title('index.html')).toBe('Install guides');
    expect(await page.locator('.newer').count()).toBe(0);
    // The network is back: now all of the newer build comes.
    host.serve.left = Number.POSITIVE_INFINITY;
    await look();
    expect(await state('waiting')).toBe('installed');
  });

  it('keeps the guide in one file when that is asked for at the foot of its page, and can be put on the start screen', async () => {
    await visit();
    await page.goto(host.address + guide);
    const href = await page.locator('link[rel=manifest]').getAttribute('href');
    expect(href).toBe(`${host.address}manifest.webmanifest`);
    const session = await page.context().newCDPSession(page);
    const { errors, data } = await session.send('Page.getAppManifest');
    expect(errors).toEqual([]);
    expect(JSON.parse(data ?? '')).toMatchObject({ start_url: 'index.html', display: 'standalone' });
    const touch = page.getByRole('button', {
      name: /^Keep the guide in one file on this device too, \d\S* [kM]B$/,
    });
    await touch.click();
    await page.getByText('The guide in one file is kept too.').waitFor();
    expect(await touch.isVisible()).toBe(false);
    await host.stop();
    expect(await title('guides/lamp-cradle/lamp-cradle.html')).toBe('The old cradle');
    await page.goto(`${host.address}index.html`);
    expect(await page.locator('.parcel').count()).toBe(0);
  });

  it.runIf(long)(
    'keeps what is heavy of a guide by a touch that says how much it is, and again of the next build',
    async () => {
      host.serve.folder = join(top, heavy(old));
      await visit();
      await page.goto(host.address + guide);
      const picture = await page.getByAltText('Seen from afar').getAttribute('src');
      const isThere = () => page.evaluate<boolean>(`fetch(${JSON.stringify(picture)}).then((one) => one.ok)`);
      const touch = page.getByRole('button', { name: /^Keep them on this device, \d\S* [kM]B$/ });
      expect(await page.locator('.head .parcel').textContent()).toContain('need the network');
      // The network dies at the second file: what is missing is said, and the touch is still there.
      host.serve.left = 1;
      await touch.click();
      await page.getByText('Not all of it came').waitFor();
      host.serve.left = Number.POSITIVE_INFINITY;
      await touch.click();
      await page.getByText('are kept too').waitFor();
      host.serve.left = 0;
      expect(await isThere()).toBe(true);
      host.serve.left = Number.POSITIVE_INFINITY;
      host.serve.folder = join(top, heavy(newer));
      await look();
      await page.getByRole('button', { name: 'Show the newer one' }).click();
      await expect.poll(() => page.locator('h1').textContent()).toBe('The newer cradle');
      await page.getByText('are kept too').waitFor();
      await host.stop();
      expect(await isThere()).toBe(true);
    },
  );
});

describe('a site over plain http', () => {
  it('works, and says what it cannot do', async () => {
    const faults: string[] = [];
    page.on('pageerror', (error) => faults.push(String(error)));
    await page.route('http://bay.test/**', async (route) => {
      const path = decodeURIComponent(new URL(route.request().url()).pathname);
      const body = await readFile(join(top, old, path)).catch(() => null);
      const contentType = path.endsWith('.js')
        ? 'text/javascript'
        : path.endsWith('.css')
          ? 'text/css'
          : undefined;
      await route.fulfill(body ? { body, ...(contentType ? { contentType } : {}) } : { status: 404 });
    });
    await page.goto(`http://bay.test/${guide}`);
    expect(await page.evaluate('isSecureContext')).toBe(false);
    expect(await page.locator('.kept').textContent()).toContain('Over plain http');
    expect(await page.locator('.bay .bay-awake-state').textContent()).toContain('over plain http');
    await page.locator('.bay-ticks input').first().check();
    await page.reload();
    expect(await page.locator('.bay-ticks input').first().isChecked()).toBe(true);
    expect(faults).toEqual([]);
  });
});
