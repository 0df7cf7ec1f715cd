import { describe, expect, test } from 'vitest';
import type { RuleExample } from '../../src/diagnostics/rule-card.ts';
import { blurOnDrawing } from '../../src/pictures/blur-on-drawing.ts';
import { type PictureWeight, pageOverBudget, pictureOverBudget } from '../../src/pictures/budget.ts';
import { inspectPicture } from '../../src/pictures/inspect.ts';
import { pictureFinding, pictureRules } from '../../src/pictures/rules.ts';

/** What an example's pictures give, as the shop would ask. */
async function codes(example: RuleExample): Promise<string[]> {
  const found = new Set<string>();
  const weights: PictureWeight[] = [];
  for (const [file, text] of Object.entries(example)) {
    if (file.endsWith('.md')) {
      if (text.includes('blur=')) found.add(blurOnDrawing(file).code);
      continue;
    }
    const seen = await inspectPicture(Buffer.from(text), file);
    if (!seen.ok) for (const { code } of seen.problems) found.add(code);
    else weights.push({ file, kind: seen.value.kind, bytes: text.length });
  }
  for (const weight of weights) found.add(pictureOverBudget(weight)?.code ?? '');
  found.add(pageOverBudget(weights)?.code ?? '');
  return [...found].filter((code) => code !== '');
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
