import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { inspect } from '../../src/shop/index.ts';
import { files } from '../rehearsal/workspace.ts';
import { long, sampleOf, screens } from '../samples.ts';
import { axeFaults } from './axe.ts';
import { firefoxOfWorker, open } from './browser.ts';
import { startHost } from './host.ts';
import { siteForTests } from './site-for-tests.ts';

const rehearsal = 'guides/light-bar/rehearsal.html';

const site = siteForTests(async () => [await inspect(files), files]);

/** What both browsers can do with a page: run a script in it. */
interface Driven {
  evaluate<T>(script: string): Promise<T>;
}

interface Screen {
  readonly ask: string;
  readonly said: string;
  readonly answers: readonly string[];
}

const screen = (page: Driven) =>
  page.evaluate<Screen>(`({
    ask: document.querySelector('.reh-ask').textContent,
    said: document.querySelector('.reh-said').textContent,
    answers: [...document.querySelectorAll('.reh-body > .reh-answers button')].map((one) => one.textContent),
  })`);

/** What can be read of a part of a page. */
const read = async (page: Page, part: string) => (await page.locator(part).allInnerTexts()).join('\n');

/** Presses the answer that begins with these words, also among what is folded away; true where there was one. */
const press = (page: Driven, words: string) =>
  page.evaluate<boolean>(`(() => {
    const all = [...document.querySelectorAll('.reh-body button')];
    const one = all.find((button) => button.textContent.replaceAll('\\u00a0', ' ').startsWith(${JSON.stringify(words)}));
    one?.click();
    return Boolean(one);
  })()`);

/** Does what the guide has next, to the end or for so many answers, and answers each question rightly. */
const follow = (page: Driven, most = 100) =>
  page.evaluate<void>(`(() => {
    const { rehearsed, rehearsing } = globalThis;
    const session = rehearsing.openSession(rehearsed, 0);
    const say = rehearsing.speaker(rehearsed, 0, session);
    const kept = () => JSON.parse(localStorage.getItem(Object.keys(localStorage).find((key) => key.startsWith('baybook rehearsal'))));
    for (let turn = 0; turn < ${most}; turn += 1) {
      const done = new Set(kept().done.map(([key]) => key));
      const task = session.tasks.find(({ key }) => !done.has(key));
      if (!task) return;
      const ask = document.querySelector('.reh-ask').textContent;
      const question = rehearsed.actions[task.action]?.asks.find((one) => one.ask === ask);
      const words = question ? question.options[question.right] : ask === 'Stop' ? 'Back to the work' : say.task(task);
      [...document.querySelectorAll('.reh-body button')].find((button) => button.textContent === words).click();
    }
  })()`);

/** Lays out all that the guide needs, but for some of it. */
const layOut = (page: Driven, ...without: readonly string[]) =>
  page.evaluate<void>(`(() => {
    for (const { id } of globalThis.rehearsed.plans[0].layOut)
      if (!${JSON.stringify(without)}.includes(id)) document.querySelector('input[value="' + id + '"]').checked = true;
    [...document.querySelectorAll('.reh-answer')].find((one) => one.textContent === 'All is laid out').click();
  })()`);

it('from file://: what is wrong is told, stops where it hurts, and stands at the end with its step; then it is asked again', async () => {
  const { page, faults } = await open(site.browser, site.folder, rehearsal);
  expect(await page.locator('.rehearse-off').count()).toBe(0);
  await layOut(page, 'cutter');
  expect((await screen(page)).answers).toContain('Set “battery isolated”');

  await press(page, 'Remove the cover');
  expect((await screen(page)).said).toBe(
    'Remove the cover: no. The cover is still held by the 6 side screws and the old clip. Both lamp plugs are still plugged in, on the cover.',
  );
  await press(page, 'Disconnect both lamp plugs');
  expect((await screen(page)).ask).toBe('Stop');
  expect(await read(page, '.reh-body .message.danger')).toContain('Keep your hands clear');
  expect(await read(page, '.reh-body')).toContain('It guards step 1, Isolate the battery.');
  await press(page, 'Back to the work');

  await press(page, 'Remove the old clip');
  expect((await screen(page)).said).toMatch(/done\. The guide does this later: step 2, Free the cover\./);
  await follow(page, 9);
  const { ask, answers } = await screen(page);
  expect(ask).toBe('What is done next?');
  expect(answers.length).toBeGreaterThan(2);
  await page.reload();
  expect(await read(page, '.reh-state')).toMatch(/On the bench\s+Cover/);
  await follow(page);

  expect((await screen(page)).ask).toBe('The job is done. What went wrong:');
  const slips = await page.locator('.reh-slips > li').allInnerTexts();
  expect(slips).toEqual([
    expect.stringMatching(/^What is done next: Remove the cover\. .*See step 2, Free the cover$/s),
    expect.stringMatching(/^What is done next: Disconnect both lamp plugs\. /),
    expect.stringMatching(/^What is laid out: Cutter\. Not laid out, and needed for step 5, Cut the notch\./),
  ]);
  expect(await page.locator('.reh-slips a').first().getAttribute('href')).toBe('index.html#free');
  expect(await page.locator('#reh_text').inputValue()).toMatch(/Trainer: _+ {2}Date: _+/);

  await press(page, 'Once more, with these alone');
  await press(page, 'Set “battery isolated”');
  await press(page, 'Set “battery isolated”');
  await press(page, 'Cutter');
  expect((await screen(page)).ask).toBe('The job is done, and nothing went wrong');
  expect(faults).toEqual([]);
  await page.context().close();
});

it('keeps of an older edition what still reads the same, and says the rest', async () => {
  const { page } = await open(site.browser, site.folder, rehearsal);
  await layOut(page);
  await follow(page, 6);
  await page.evaluate(`(() => {
    const key = Object.keys(localStorage)[0];
    const old = JSON.parse(localStorage.getItem(key));
    localStorage.removeItem(key);
    const done = [...old.done.slice(0, 2), ['gone', 'Undo the tie'], ...old.done.slice(2)];
    const edition = { ...old, fingerprint: 'older', edition: 'revision 0', done };
    localStorage.setItem(key.replace(old.fingerprint, 'older'), JSON.stringify(edition));
  })()`);
  await page.reload();
  expect((await screen(page)).ask).toBe('The guide has changed');
  const text = await read(page, '.reh-body');
  expect(text).toMatch(/another edition \(revision 0\)\. What still reads the same is kept: (\d+) of \d+\./);
  expect(text).toContain('Undo the tie');
  await press(page, 'Go on');
  expect((await screen(page)).ask).toBe('What is done next?');
  await page.context().close();
});

it.each(sampleOf(screens(390, 1280), 1))(
  'is clean by axe, large enough and done by the keyboard, %s, %i px',
  async (colorScheme, width) => {
    const { page } = await open(site.browser, site.folder, rehearsal, {
      colorScheme,
      viewport: { width, height: 844 },
      reducedMotion: 'reduce',
    });
    expect(await axeFaults(page)).toEqual([]);
    const low = () =>
      page.evaluate(`[...document.querySelectorAll('#rehearse :is(button, summary, label.reh-pick)')]
      .filter((one) => one.checkVisibility() && one.getBoundingClientRect().height < 56).map((one) => one.textContent)`);
    expect(await low()).toEqual([]);
    await layOut(page);
    expect(await page.evaluate('document.activeElement.textContent')).toBe('What is done next?');
    await page.keyboard.press('Tab');
    expect(await page.evaluate('document.activeElement.className')).toBe('reh-answer');
    await page.keyboard.press('Enter');
    expect((await screen(page)).said).not.toBe('');
    expect(await axeFaults(page)).toEqual([]);
    expect(await low()).toEqual([]);
    expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth')).toBe(0);
    await page.context().close();
  },
);

it('asks the card set one card at a time; what is asked again later comes after the rest', async () => {
  const { page, faults } = await open(site.browser, site.folder, 'guides/light-bar/cards.html', {
    viewport: { width: 390, height: 844 },
  });
  const low = `[...document.querySelectorAll('main :is(button, summary, .card-places a)')]
    .filter((one) => one.checkVisibility() && one.getBoundingClientRect().height < 56).length`;
  expect(await page.evaluate(low)).toBe(0);
  const asked = async () => (await page.locator('.reh-ask').textContent()) ?? '';
  const answer = (words: string) => page.getByRole('button', { name: words }).click();
  await answer('One card at a time, in any order');
  const first = await asked();
  await answer('Show the answer');
  expect(await page.locator('#cards-turn .card-places a').first().getAttribute('href')).toMatch(
    /^index\.html#/,
  );
  expect(await page.evaluate(low)).toBe(0);
  await answer('Ask this one again later');
  const others = new Set<string>();
  for (let card = 1; card < 7; card += 1) {
    others.add(await asked());
    await answer('Show the answer');
    await answer('Next card');
  }
  expect(others.size).toBe(6);
  expect(await asked()).toBe(first);
  await answer('Show the answer');
  await answer('Next card');
  expect(await asked()).toBe('That was the last card');
  await answer('To the list of all cards');
  expect(await page.locator('.card:visible').count()).toBe(7);
  expect(faults).toEqual([]);
  await answer('One card at a time, in any order');
  await answer('Show the answer');
  expect(await axeFaults(page)).toEqual([]);
  await page.context().close();
});

it('says what it would be where scripts are off', async () => {
  const context = await site.browser.newContext({ javaScriptEnabled: false });
  const page = await context.newPage();
  await page.goto(pathToFileURL(join(site.folder, rehearsal)).href);
  expect(await read(page, 'main')).toMatch(/The whole job, done here.*here it does not run/s);
  expect(await page.locator('#rehearse').isVisible()).toBe(false);
  await page.goto(pathToFileURL(join(site.folder, 'platforms/test-van/cards.html')).href);
  await page.locator('.card summary').first().click();
  expect(await read(page, '.card-back')).toContain('Bar bolt');
  await context.close();
});

it('runs offline after a visit to another page', async () => {
  const host = await startHost(site.folder);
  const context = await site.browser.newContext();
  const page = await context.newPage();
  await page.goto(`${host.address}index.html`);
  await page.evaluate('navigator.serviceWorker.ready');
  await context.setOffline(true);
  await page.goto(host.address + rehearsal);
  await layOut(page);
  await follow(page);
  expect((await screen(page)).ask).toBe('The job is done, and nothing went wrong');
  await context.close();
  await host.stop();
});

it.runIf(long)('runs from file:// in Firefox', async () => {
  const context = await (await firefoxOfWorker()).createBrowserContext();
  const page = await context.newPage();
  await page.goto(pathToFileURL(join(site.folder, rehearsal)).href);
  await page.waitForSelector('.reh-picks');
  const driven: Driven = { evaluate: async <T>(script: string) => (await page.evaluate(script)) as T };
  await layOut(driven);
  await press(driven, 'Remove the cover');
  expect((await screen(driven)).said).toContain('The cover is still held by');
  await follow(driven);
  expect((await screen(driven)).ask).toBe('The job is done. What went wrong:');
  await context.close();
});

it.runIf(long)('runs in Firefox when the host from which it came is gone', async () => {
  const host = await startHost(site.folder);
  const context = await (await firefoxOfWorker()).createBrowserContext();
  const page = await context.newPage();
  await page.goto(`${host.address}index.html`);
  await page.evaluate('navigator.serviceWorker.ready.then(() => true)');
  await host.stop();
  await page.goto(host.address + rehearsal);
  await page.waitForSelector('.reh-picks');
  const driven: Driven = { evaluate: async <T>(script: string) => (await page.evaluate(script)) as T };
  await layOut(driven);
  await follow(driven);
  expect((await screen(driven)).ask).toBe('The job is done, and nothing went wrong');
  await context.close();
});
