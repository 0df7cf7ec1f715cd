import type { Locator } from 'playwright-core';

/** The least height of what a hand in a glove hits, in pixels. */
const LEAST = 56;

/** The targets that are too low for a hand in a glove, or are not seen at all, as they stand in the page. */
export function lowTargets(targets: Locator): Promise<string[]> {
  return targets.evaluateAll(
    (all, least) =>
      all.filter((one) => one.getBoundingClientRect().height < least).map((one) => one.outerHTML),
    LEAST,
  );
}
