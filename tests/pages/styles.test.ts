import { readdir, readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { contrast, grounds, rgb } from '../../src/site/device/accent.ts';
import { signalPanel, signalWords } from '../../src/trade/signal-words.ts';

const folder = new URL('../../templates/styles/', import.meta.url);
const tokens = await readFile(new URL('tokens.css', folder), 'utf8');

/** The colours of a scheme by name; dark ones stand on the light ones. */
function colours(text: string): ReadonlyMap<string, string> {
  return new Map(
    [...text.matchAll(/--([\w-]+): (#[0-9a-f]{6});/g)].map(([, name = '', value = '']) => [name, value]),
  );
}

const [lightText = '', darkText = ''] = tokens.split('prefers-color-scheme: dark');
const light = colours(lightText);
const dark = new Map([...light, ...colours(darkText)]);

function between(scheme: ReadonlyMap<string, string>, a: string, b: string): number {
  return contrast(rgb(scheme.get(a) ?? ''), rgb(scheme.get(b) ?? ''));
}

describe('the colours of the pages', () => {
  it.each([
    ['light', light],
    ['dark', dark],
  ] as const)('give text on every ground a contrast of 4.5, %s (WCAG 2.2, 1.4.3)', (_, scheme) => {
    for (const text of ['ink', 'ink-quiet', 'accent']) {
      for (const ground of ['paper', 'field']) {
        expect(between(scheme, text, ground), `${text} on ${ground}`).toBeGreaterThanOrEqual(4.5);
      }
    }
  });

  it.each([
    ['light', light],
    ['dark', dark],
  ] as const)('give the edge of a control a contrast of 3, %s (WCAG 2.2, 1.4.11)', (_, scheme) => {
    expect(between(scheme, 'ink-quiet', 'paper')).toBeGreaterThanOrEqual(3);
  });

  it('are those of the signal words: RAL 3001, 2010, 1003 and 5005 (ISO 3864-4), with text at 4.5', () => {
    for (const word of signalWords) {
      const panel = signalPanel(word, 'ansi');
      for (const scheme of [light, dark]) {
        expect(scheme.get(word)).toBe(panel.background);
        expect(scheme.get(`${word}-text`)).toBe(panel.text);
        expect(between(scheme, word, `${word}-text`)).toBeGreaterThanOrEqual(4.5);
      }
    }
    // The screen values of these RAL numbers, as published with ISO 3864-4.
    expect(signalWords.map((word) => light.get(word))).toEqual(['#9b2423', '#d05d29', '#f9a800', '#005387']);
  });

  it('have the grounds against which a shop’s accent is judged', () => {
    expect([light.get('paper'), dark.get('paper')]).toEqual([grounds.light, grounds.dark]);
  });
});

describe('the style sheets', () => {
  it('ask for nothing from outside, and set colours in one place alone', async () => {
    for (const name of (await readdir(folder)).filter((file) => file.endsWith('.css'))) {
      const text = await readFile(new URL(name, folder), 'utf8');
      expect(text, name).not.toMatch(/@import|url\(|https?:/);
      // Paper is black on white, whatever the screen is.
      if (!['tokens.css', 'print.css', 'paper.css'].includes(name))
        expect(text, name).not.toMatch(/#[0-9a-f]{3,8}\b(?=[;\s])/i);
    }
  });
});
