import { expect, test } from 'vitest';
import { compareSignalWords, mostSevere, signalPanel, signalWords } from '../../src/trade/signal-words.ts';

test('only NOTICE stands without the safety alert symbol', () => {
  expect(signalWords.filter((word) => !signalPanel(word, 'ansi').alert)).toEqual(['notice']);
});

test('ISO 3864-2 has no NOTICE', () => {
  expect(signalPanel('notice', 'iso').word).toBe('');
  expect(signalPanel('notice', 'ansi').word).toBe('NOTICE');
  expect(signalPanel('danger', 'iso').word).toBe('DANGER');
});

test('of several hazards the most severe gives the word', () => {
  expect(mostSevere(['notice', 'warning', 'caution'])).toBe('warning');
  expect(mostSevere([])).toBeUndefined();
  expect((['notice', 'danger', 'caution'] as const).toSorted(compareSignalWords)).toEqual([
    'danger',
    'caution',
    'notice',
  ]);
});
