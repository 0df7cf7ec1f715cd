import { existsSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import puppeteer, { type Browser } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { buildSite } from '../../src/site/build-site.ts';
import { referenceInspection } from '../site/reference-shop.ts';
import { files } from '../site/workspace.ts';

// A browser on a busy machine takes its time; nothing here is about speed.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

let browser: Browser;
let top: string;

beforeAll(async () => {
  top = await mkdtemp(join(tmpdir(), 'baybook '));
  const outcome = await buildSite(referenceInspection(), files(), join(top, 'a stick', 'our guides'));
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

describe('the search in Firefox, from file:// in a nested folder with spaces', () => {
  it('finds a misspelt tool and a torque, and leads to the step', async () => {
    const page = await browser.newPage();
    await page.goto(pathToFileURL(join(top, 'a stick', 'our guides', 'index.html')).href);
    await page.waitForSelector('#find_text');
    await page.type('#find_text', 'trim leaver');
    await page.waitForSelector('.found .entry');
    expect(await page.$eval('.found .entry', (link) => link.textContent)).toBe('Trim lever');
    await page.$eval('#find_text', (input) => Object.assign(input, { value: '' }));
    await page.type('#find_text', '25 Nm');
    await page.waitForSelector('.found a[href$="#hang"]');
    await Promise.all([page.waitForNavigation(), page.click('.found a[href$="#hang"]')]);
    expect(page.url()).toMatch(/\/our%20guides\/guides\/lamp-cradle\/index\.html#hang$/);
    await page.close();
  });
});
