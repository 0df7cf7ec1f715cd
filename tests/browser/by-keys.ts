import type { Page } from 'playwright-core';

/** Where the focus is, and whether any of it is seen: nine points of it are asked for what lies on top. */
const focusNow = `(() => {
  const at = document.activeElement;
  if (!at || at === document.body || at.dataset.visited) return null;
  at.dataset.visited = 'yes';
  const words = (at.textContent || at.getAttribute('aria-label') || at.name || '').trim().slice(0, 40);
  const name = at.tagName + '.' + at.getAttribute('class') + ' “' + words + '”';
  const box = at.matches('[type=checkbox], [type=radio]') ? at.closest('label') ?? at : at;
  const { left, top, width, height } = box.getBoundingClientRect();
  const parts = [0.1, 0.5, 0.9];
  const isSeen = parts.some((down) => parts.some((across) => {
    const hit = document.elementFromPoint(left + width * across, top + height * down);
    return hit !== null && (box.contains(hit) || hit.contains(box));
  }));
  const hasRing = [at, box].some((one) => getComputedStyle(one).outlineStyle !== 'none');
  return { name, isSeen, hasRing };
})()`;

/** Goes through a page by the Tab key: how many stops there are, and which are out of sight or show no focus. */
export async function stopsByKeys(page: Page): Promise<{ readonly stops: number; readonly lost: string[] }> {
  const lost: string[] = [];
  for (let stops = 0; ; stops += 1) {
    await page.keyboard.press('Tab');
    const now = await page.evaluate<{ name: string; isSeen: boolean; hasRing: boolean } | null>(focusNow);
    if (!now) return { stops, lost };
    if (!now.isSeen) lost.push(`${now.name} is out of sight`);
    if (!now.hasRing) lost.push(`${now.name} shows no focus`);
  }
}

/** Opens a dialog by the Enter key on what opens it, goes through it, and leaves it by Escape; what went wrong. */
export async function dialogByKeys(
  page: Page,
  opener: string,
  look: () => Promise<string[]>,
): Promise<string[]> {
  const inside = '(document.querySelector("dialog[open]")?.contains(document.activeElement) ?? false)';
  const button = page.locator(opener).first();
  await button.focus();
  await page.keyboard.press('Enter');
  await page.waitForSelector('dialog[open]');
  const faults = (await page.evaluate(inside)) ? [] : ['the focus is not in the dialog'];
  faults.push(...(await look()));
  for (let key = 0; key < 40; key += 1) {
    await page.keyboard.press('Tab');
    // The browser's own controls, of which a headless one has none, stand between the last and the first.
    if (!(await page.evaluate(`${inside} || document.activeElement === document.body`)))
      faults.push('the focus leaves the dialog that is open');
  }
  await page.keyboard.press('Escape');
  if ((await page.locator('dialog[open]').count()) > 0) faults.push('Escape does not close it');
  if (!(await button.evaluate((one) => one === document.activeElement)))
    faults.push('the focus does not go back to what opened it');
  return faults.map((fault) => `${opener}: ${fault}`);
}

/** Numbers that a line's end parts from their unit, and ranges that it parts. What is too long for any line may break. */
export const partedNumbers = `(() => {
  const found = [];
  const walk = document.createTreeWalker(document.querySelector('main'), NodeFilter.SHOW_TEXT);
  for (let text = walk.nextNode(); text; text = walk.nextNode()) {
    if (text.parentElement.closest('script, code, pre, option, svg')) continue;
    for (const match of text.data.matchAll(/\\d[ \\u00a0](?:mm|min|h|N·m|in|kg|°C|A|V)(?![\\p{L}\\d])|\\d–\\u2060?\\d/gu)) {
      const range = document.createRange();
      range.setStart(text, match.index);
      range.setEnd(text, match.index + match[0].length);
      const lines = new Set([...range.getClientRects()].filter(({ width }) => width > 0).map(({ top }) => Math.round(top)));
      if (lines.size > 1) found.push(text.data.slice(Math.max(0, match.index - 20), match.index + 20));
    }
  }
  return found;
})()`;
