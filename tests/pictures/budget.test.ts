import { expect, test } from 'vitest';
import { pageOverBudget, pictureOverBudget } from '../../src/pictures/budget.ts';

test('a picture within its budget is silent, a heavier one is named', () => {
  expect(pictureOverBudget({ file: 'a/b.jpg', kind: 'raster', bytes: 600_000 })).toBeNull();
  expect(pictureOverBudget({ file: 'a/b.jpg', kind: 'raster', bytes: 600_001 })?.message).toBe(
    'a/b.jpg is 601 kB on the page, over the 600 kB for one picture; crop it to what the step shows',
  );
  expect(pictureOverBudget({ file: 'a/b.svg', kind: 'svg', bytes: 250_000 })?.message).toBe(
    'a/b.svg is 250 kB on the page, over the 200 kB for one picture; simplify its paths',
  );
});

test('a page names its three heaviest pictures, and counts a picture once', () => {
  const pictures = [2, 3, 1, 0.5].map((mega) => ({
    file: `p${mega}.jpg`,
    kind: 'raster' as const,
    bytes: mega * 1e6,
  }));
  expect(pageOverBudget([...pictures.slice(0, 3), ...pictures.slice(0, 3)])).toBeNull();
  expect(pageOverBudget(pictures)?.message).toBe(
    'the pictures of this page are 6500 kB, over its 6000 kB; the heaviest are p3.jpg (3000 kB), p2.jpg (2000 kB), p1.jpg (1000 kB)',
  );
});
