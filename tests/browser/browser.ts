import { existsSync } from 'node:fs';
import { mkdtemp } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, type BrowserContextOptions, chromium, type Page, type Request } from 'playwright-core';
import puppeteer, { type Browser as Firefox } from 'puppeteer-core';
import { sharedFolder } from '../shared-folder.ts';

/** The shell draws as the others do, for less than half of their work: it has no windows to keep. */
const places = ['chromium-headless-shell', 'chromium', 'chromium-browser', 'google-chrome'].map(
  (name) => `/usr/bin/${name}`,
);

/**
 * The browser that `CHROMIUM` names, or Debian's own, with nothing that would call home: one for all files of a worker,
 * which ends with it.
 */
export const chromiumOfWorker = oneAlive(startChromium, (browser) => browser.isConnected());

async function startChromium(): Promise<Browser> {
  const executablePath = process.env.CHROMIUM ?? places.find((place) => existsSync(place));
  if (!executablePath) {
    throw new Error('no Chromium: install the Debian package "chromium-headless-shell" or set CHROMIUM');
  }
  endWithWorker();
  return chromium.launch({
    executablePath,
    handleSIGTERM: false,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
}

/** The Firefox that `FIREFOX` names, or Debian's own: one for all files of a worker, which ends with it. Its profile goes with the run. */
export const firefoxOfWorker = oneAlive(
  () => startFirefox(),
  (browser) => browser.connected,
);

/** A Firefox with a profile of its own, as on another device; `downloads` is where it saves what is downloaded. */
export async function startFirefox(downloads?: string): Promise<Firefox> {
  const executablePath = process.env.FIREFOX ?? '/usr/bin/firefox-esr';
  if (!existsSync(executablePath)) {
    throw new Error('no Firefox: install the Debian package "firefox-esr" or set FIREFOX');
  }
  endWithWorker();
  const userDataDir = await mkdtemp(join(await sharedFolder(), 'firefox '));
  const handleSIGTERM = false;
  const extraPrefsFirefox = downloads
    ? { 'browser.download.folderList': 2, 'browser.download.dir': downloads }
    : {};
  return puppeteer.launch({
    browser: 'firefox',
    executablePath,
    headless: true,
    userDataDir,
    handleSIGTERM,
    extraPrefsFirefox,
  });
}

let isEnding = false;

/**
 * Both libraries end their browsers when the process exits. Told to stop by a signal they would close them in good order
 * instead, for which a worker is given no time, and Firefox would go on alone.
 */
function endWithWorker(): void {
  if (!isEnding) process.once('SIGTERM', () => process.exit());
  isEnding = true;
}

/** Starts something the first time that it is asked for, and anew where it has died since. */
function oneAlive<T>(start: () => Promise<T>, isAlive: (one: T) => boolean): () => Promise<T> {
  let started: Promise<T> | null = null;
  return async () => {
    const running = await started;
    if (running !== null && isAlive(running)) return running;
    started = start();
    return started;
  };
}

/** True of a failed request that failed for want of its file: a page that is left early gives up its icon. */
export function isMissing(request: Request): boolean {
  return request.failure()?.errorText !== 'net::ERR_ABORTED';
}

/** A page opened from a folder, with all that went wrong on it. */
export interface Opened {
  readonly page: Page;
  /** Messages of the console that are warnings or errors, failed requests, and requests to a host. */
  readonly faults: string[];
}

/** Opens a file of the site as a technician does, by `file://`. */
export async function open(
  browser: Browser,
  folder: string,
  path: string,
  options: BrowserContextOptions & { readonly hash?: string } = {},
): Promise<Opened> {
  const { hash = '', ...rest } = options;
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, ...rest });
  // A busy machine takes its time; what hangs fails by the time of its test.
  context.setDefaultTimeout(120_000);
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') faults.push(message.text());
  });
  page.on('pageerror', (error) => faults.push(String(error)));
  page.on('requestfailed', (request) => {
    if (isMissing(request)) faults.push(`failed: ${request.url()}`);
  });
  page.on('request', (request) => {
    if (!request.url().startsWith('file:')) faults.push(`asked ${request.url()}`);
  });
  await page.goto(pathToFileURL(`${folder}/${path}`).href + hash);
  return { page, faults };
}
