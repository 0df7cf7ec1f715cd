import { describe, expect, test } from 'vitest';
import { heldOut } from './held-out.ts';
import { codesFor, precision, recall, type Tally, tally } from './judge.ts';
import { workedWith } from './worked-with.ts';

function printed(name: string, { hits, falseAlarms, misses }: Tally): string {
  const share = (value: number) => value.toFixed(2);
  const scores = `precision ${share(precision({ hits, falseAlarms, misses }))}, recall ${share(recall({ hits, falseAlarms, misses }))}`;
  return `${name}: ${scores} (${hits} right, ${falseAlarms.length} false alarms, ${misses.length} missed)`;
}

describe('the labelled sentences', () => {
  test('are at least eighty, each once', () => {
    const texts = [...heldOut, ...workedWith].map(([place, text]) => `${place} ${text}`);
    expect(texts.length).toBeGreaterThanOrEqual(80);
    expect(new Set(texts).size).toBe(texts.length);
    expect(heldOut.length).toBeGreaterThanOrEqual(texts.length / 2);
  });

  test('that were labelled before the rules: precision at least 0.9, recall at least 0.7', () => {
    const result = tally(heldOut);
    console.log(printed('held out', result));
    expect(precision(result), result.falseAlarms.join('\n')).toBeGreaterThanOrEqual(0.9);
    expect(recall(result), result.misses.join('\n')).toBeGreaterThanOrEqual(0.7);
  });

  test('that the rules were written with', () => {
    const result = tally(workedWith);
    console.log(printed('worked with', result));
    expect(result.falseAlarms).toEqual([]);
    expect(result.misses).toEqual([]);
  });
});

describe('a rule of plain language', () => {
  const late = 'Warm the trim first if it is cold.';

  test('is switched off by its code, or with all of its kind', () => {
    expect(codesFor('step', late)).toEqual(['condition-late']);
    expect(codesFor('step', late, ['condition-late'])).toEqual([]);
    expect(codesFor('step', late, ['plain-language'])).toEqual([]);
    expect(codesFor('step', late, ['sentence-long'])).toEqual(['condition-late']);
  });

  test.each(['message', 'prove', 'figure'] as const)('does not judge a %s', (place) => {
    expect(codesFor(place, late)).toEqual([]);
  });
});
