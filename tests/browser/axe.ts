import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

const tags = ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice'];

/**
 * What axe-core finds wrong on a page, by WCAG 2.2 A and AA and by its best practice: the rule, and the elements.
 *
 * @param include the part of the page to look at, as a selector
 */
export async function axeFaults(page: Page, include = 'html'): Promise<string[]> {
  // The bar at the foot lies over whatever is there until the page is moved on.
  await page.evaluate(`(() => {
    const bar = document.querySelector('.map-bar');
    if (bar) bar.style.position = 'static';
  })()`);
  // Only faults are told in full: what passes is four fifths of its work. No page has frames, so one run sees all.
  const axe = new AxeBuilder({ page }).include(include).setLegacyMode();
  const { violations } = await axe
    .options({ runOnly: { type: 'tag', values: tags }, resultTypes: ['violations'] })
    .analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
}
