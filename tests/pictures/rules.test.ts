import { describe, expect, test } from 'vitest';
import type { RuleExample } from '../../src/diagnostics/rule-card.ts';
import { type PictureWeight, pageOverBudget } from '../../src/pictures/budget.ts';
import { checkPicture } from '../../src/pictures/check-picture.ts';
import { pictureFinding, pictureRules } from '../../src/pictures/rules.ts';
import { noStore } from '../../src/store/store.ts';

const box = { left: 0.1, top: 0.1, width: 0.1, height: 0.1 };

/** What an example's pictures give, as the shop would ask. */
async function codes(example: RuleExample): Promise<string[]> {
  const found: string[] = [];
  const weights: PictureWeight[] = [];
  const files = Object.entries(example);
  const blur = files.some(([, text]) => text.includes('blur=')) ? [box] : [];
  for (const [file, text] of files) {
    if (file.endsWith('.md')) continue;
    const { problems, weight } = await checkPicture(
      Buffer.from(text),
      file,
      { crop: null, blur, zoom: null },
      noStore,
    );
    found.push(...problems.map(({ code }) => code));
    if (weight) weights.push(weight);
  }
  const page = pageOverBudget(weights);
  return page ? [...found, page.code] : found;
}

describe.each(pictureRules.map((card) => [card.code, card] as const))('%s', (code, card) => {
  test('its bad example gives exactly this finding, its good one none', async () => {
    expect(await codes(card.bad)).toEqual([code]);
    expect(await codes(card.good)).toEqual([]);
  });
});

test('a problem becomes a finding at the place that names the picture', () => {
  const at = { file: 'lamp/guide.md', start: 4, end: 9 };
  expect(pictureFinding({ code: 'picture-animated', message: 'a.gif moves' }, at)).toEqual({
    code: 'picture-animated',
    severity: 'error',
    message: 'a.gif moves',
    at,
    notes: [],
  });
});
