import { existsSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import puppeteer, { type Browser } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { buildSite } from '../../src/site/build-site.ts';
import { files, inspection } from '../site/workspace.ts';

/** What a page tells of itself, worked out in the page. */
const facts = `({
  paper: getComputedStyle(document.body).backgroundColor,
  fog: getComputedStyle(document.getElementById('fog-aim')).display,
  pictures: [...document.images].map((image) => image.naturalWidth > 0),
  over: document.documentElement.scrollWidth - document.documentElement.clientWidth,
})`;

// A browser on a busy machine takes its time; nothing here is about speed.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

let browser: Browser;
let top: string;

beforeAll(async () => {
  top = await mkdtemp(join(tmpdir(), 'baybook '));
  const outcome = await buildSite(inspection(), files(), join(top, 'a stick'));
  if (!outcome.ok) throw new Error(outcome.problems.join('\n'));
  const executablePath = process.env.FIREFOX ?? '/usr/bin/firefox-esr';
  if (!existsSync(executablePath)) {
    throw new Error('no Firefox: install the Debian package "firefox-esr" or set FIREFOX');
  }
  browser = await puppeteer.launch({ browser: 'firefox', executablePath, headless: true });
});

afterAll(async () => {
  await browser.close();
  await rm(top, { recursive: true, force: true });
});

describe('a guide in Firefox, from file://', () => {
  it('has its styles, pictures and script under its own policy, and keeps the pick in the link', async () => {
    const page = await browser.newPage();
    await page.setViewport({ width: 390, height: 844 });
    const address = pathToFileURL(join(top, 'a stick', 'guides', 'lamp-cradle', 'index.html')).href;
    await page.goto(`${address}#build=fog:no`);
    await page.waitForSelector('[data-plan="1"]');
    expect(await page.evaluate(facts)).toEqual({
      paper: 'rgb(252, 251, 248)',
      fog: 'none',
      pictures: [true],
      over: 0,
    });
    await page.click('input[value="yes"]');
    await page.waitForSelector('[data-plan="0"]');
    expect(await page.evaluate('location.hash')).toBe('#build=fog:yes');
    expect(await page.evaluate(facts)).toMatchObject({ fog: 'block' });
    await page.close();
  });
});
