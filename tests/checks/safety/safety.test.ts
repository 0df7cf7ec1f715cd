import { describe, expect, test } from 'vitest';
import { inspect, memoryFiles } from '../../../src/shop/index.ts';
import { exampleWorkspace } from '../../example-workspace.ts';

/** The codes and messages of what is found in the body of a guide. */
async function found(body: string, files: { readonly [path: string]: string } = {}): Promise<string[]> {
  const workspace = exampleWorkspace({ ...files, 'example/guide.md': body });
  const { findings } = await inspect(memoryFiles(workspace));
  return findings.map(({ code, message }) => `${code}: ${message}`);
}

const step = '::step[Draw the panel back]{#draw}\n\n';
const work = 'Draw the panel back.\n\n';

function message(word: string, hazard: string, text: string): string {
  return `:::${word}[${hazard}]\n${text}\n:::\n\n`;
}

describe('a safety message', () => {
  // ANSI Z535.6: hazard, consequence and avoidance.
  test.each([
    ['The lip can cut a finger. Wear gloves.', []],
    ['Wear gloves, or the lip cuts a finger.', []],
    ['Never reach behind the panel: its lip cuts.', []],
    ['The lip can cut a finger.', ['how to avoid it; add a sentence on what to do']],
    ['Wear gloves.', ['what happens; add a sentence on what the hazard does']],
    ['', ['what happens, nor how to avoid it']],
  ])('that says "%s"', async (text, lacks) => {
    const codes = await found(`${step}${message('caution', 'Sharp edge', text)}${work}`);
    expect(codes).toEqual(lacks.map((what) => `message-incomplete: this caution does not say ${what}`));
  });

  test('may stand between two actions, and guards the second', async () => {
    const between = `::part[Tray]{#tray}\n\n${step}:remove[tray].\n\n${message('caution', 'Grit', 'Dirt can hurt an eye. Look away.')}:refit[tray].`;
    expect(await found(between)).toEqual([]);
  });

  const repeated = (count: number) =>
    Array.from(
      { length: count },
      (_, index) =>
        `::step[Draw panel ${index} back]{#draw-${index}}\n\n${message('caution', 'Sharp edge', 'The lip can cut a finger. Wear gloves.')}${work}`,
    ).join('');

  test('may stand in two steps of a section', async () => {
    expect(await found(repeated(2))).toEqual([]);
    expect((await found(repeated(4))).map((text) => text.split(';')[0])).toEqual([
      'message-repeated: the same caution stands in 4 steps of this section',
    ]);
  });

  test('that derived steps repeat is written once', async () => {
    const parts = [1, 2, 3].map((n) => `::part[Panel ${n}]{#panel-${n}}\n`).join('');
    const strip = [1, 2].map(
      (n) =>
        `::step[Take off panel ${n}]{#off-${n}}\n\n${message('caution', 'Sharp edge', 'The lip can cut a finger. Wear gloves.')}:remove[panel-${n}].\n\n`,
    );
    const body = `## Strip down {#strip}\n\n${parts.replace(/::part\[Panel 3\].*\n/, '')}\n${strip.join('')}## Refit {#refit}\n\n::reverse{of=strip}\n`;
    expect(await found(body)).toEqual([]);
  });
});

describe('the signal word', () => {
  // ANSI Z535.6: DANGER, WARNING and CAUTION are for injury, NOTICE for what is not.
  test.each([
    ['danger', 'Scratched paint', 'The clips scratch the paint. Tape the edge.', 'signal-word-too-strong'],
    ['warning', 'Cold trim', 'The edge cracks below 10 °C. Warm it first.', 'signal-word-too-strong'],
    ['warning', 'Flying chips', 'Chips can blind an eye and scratch the paint. Look away.', null],
    ['danger', 'Airbag', 'A bag that fires breaks your neck. Keep clear.', null],
    ['notice', 'Sharp edge', 'The lip can cut a finger. Wear gloves.', 'signal-word-too-weak'],
    ['notice', 'Swarf', 'Chips burn into the clear coat. Brush them off by hand.', null],
    ['notice', 'Cold trim', 'The edge cracks below 10 °C. Warm it first.', null],
  ])('%s over "%s": %s', async (word, hazard, text, code) => {
    const codes = await found(`${step}${message(word, hazard, text)}${work}`);
    expect(codes.map((one) => one.split(':')[0])).toEqual(code === null ? [] : [code]);
  });

  // ISO 3864-2 has no NOTICE.
  test('is one of the scheme that the shop holds to', async () => {
    const notice = `${step}${message('notice', 'Cold trim', 'The edge cracks below 10 °C. Warm it first.')}${work}`;
    expect(await found(notice, { 'shop.yaml': 'name: Example\nsignal-words: ansi\n' })).toEqual([]);
    const [only] = await found(notice, { 'shop.yaml': 'name: Example\nsignal-words: iso\n' });
    expect(only).toContain('signal-word-foreign: NOTICE is no word of ISO 3864');
  });
});

describe('work of a dangerous class', () => {
  const airbag = (item: string, head: string) =>
    `::condition[Battery isolated]{#battery-off stays}\n::connector[Airbag plug]{#plug work=airbag${item}}\n\n::step[Isolate]{#isolate}\n\n:set[battery-off]{say="make sure of"}.\n\n::step[Unplug]{#unplug${head}}\n\n:disconnect[plug], then :connect[plug].`;

  test.each([
    ['', '', ['work-unprepared', 'work-unsigned']],
    ['', ' sign-off=second', ['work-unprepared']],
    [' needs=battery-off', '', ['work-unsigned']],
    [' needs=battery-off', ' sign-off=second', []],
    ['', ' sign-off=second needs=battery-off', []],
  ])('with "%s" on the item and "%s" on the step', async (item, head, codes) => {
    expect((await found(airbag(item, head))).map((one) => one.split(':')[0])).toEqual(codes);
  });

  test.each(['brakes', 'seat-belt', 'towing'])('of %s wants the signature alone', async (work) => {
    const body = `::connector[Plug]{#plug work=${work}}\n\n::step[Unplug]{#unplug}\n\n:disconnect[plug], then :connect[plug].`;
    expect((await found(body)).map((one) => one.split(':')[0])).toEqual(['work-unsigned']);
  });

  test('may be the setting of the condition itself', async () => {
    const body =
      '::condition[Made dead]{#dead work=high-voltage stays}\n\n::step[Make dead]{#make sign-off=second}\n\n:set[dead]{say="have"}.';
    expect(await found(body)).toEqual([]);
  });
});
