import { describe, expect, it } from 'vitest';
import { type Bench, bench } from '../driver.ts';
import { drawing } from './workspace.ts';

const shop = `name: Slipway Fitting
crew: 2
papers: [A4]
`;

const boatWords = 'words: {vehicle: boat, left: port, right: starboard, registration: hull number}\n';

const platform = `---
title: Teal Skerry, day boat
---

An invented day boat of 6 m.

::part[Bow panel]{#panel}
`;

const guide = `---
title: Bow thruster
platform: skerry
options:
  lamps: Bow lamps
---

## What you need {#need}

::wear[Eye protection]{#eye-protection}
::none{of=conditions}
::supply[Sealant]{#sealant quantity="40 ml"}
::tool{#bit}
::tool{#saw}
::kit[Thruster]{#thruster}
::measure[Gap at the rail]{#gap expect="2..4 mm"}

## What comes off {#off}

::part{#panel}
::part[Rail cap]{#cap side=left}
::fastener[Rail screw]{#rail-screw drive=T20 count=2 side=left holds=cap}
::fastener[Locker screw]{#locker-screw drive=T20 count=3 side=each}
::connector[Bow lamp plug]{#plug side=each when=lamps}

## Strip down {#strip}

::step[Open the rail]{#rail time="4 min"}

:remove[rail-screw]{with=bit} and :remove[cap].

:::figure[The rail]{src=rail.svg alt="The rail from above" shows=left}
:::

::step[Open the lockers]{#lockers side=each time="4 min"}

:remove[locker-screw]{with=bit}, and :where[:disconnect[plug].]{when=lamps}
:measure[gap].

## Cut {#cut}

:::cut-template[Notch]{#notch panel=panel face=outside side=each}
::datum[Stem]{axis=vertical at="0 mm"}
::datum[Rail]{axis=horizontal at="0 mm"}
::outline{points="10,0 60,0 60,30 r5 10,30 r5" unit=mm open-edge=bottom}
:::

::step[Cut the notches]{#cut-notch side=each time="5 min"}

:::warning[Flying chips]
Chips can injure an eye. Wear :wear[eye-protection].
:::

:cut[notch]{with=saw}.

## Fit {#fit}

::step[Push it in]{#push people=2 time="5 min"}

:apply[sealant]{amount="40 ml"} and :fit[thruster].

## Refit {#refit}

::reverse{of=strip}
`;

const files = (words: { readonly shop?: string }) => ({
  'shop.yaml': shop + (words.shop ?? ''),
  'tools.yaml': 'bit: {name: T20 bit, drive: T20}\nsaw: {name: Saw, cutter-radius: 1 mm}\n',
  'platforms/skerry.md': platform,
  'bow-thruster/guide.md': guide,
  'bow-thruster/rail.svg': drawing,
});

/** The words of every page of a site, as people and screen readers get them; data of the page's script with them. */
async function pagesOf(desk: Bench): Promise<ReadonlyMap<string, string>> {
  const built = await desk.build();
  expect(built.code, built.out).toBe(0);
  // The handbook is for authors, and speaks of the format, whose words are the same in every trade.
  const printed = [...(await desk.site())].filter(
    ([path]) => /\.(?:html|svg)$|page-feet\.css$/.test(path) && !path.startsWith('handbook/'),
  );
  return new Map(
    printed.map(([path, bytes]) => [
      path,
      bytes
        .toString('utf8')
        // A script and a style say nothing; of a link only the words count.
        .replace(/<script>[\s\S]*?<\/script>|<style>[\s\S]*?<\/style>/g, '')
        .replace(
          / (?:href|src|srcset|id|class|data-side|data-torque|data-reading|for)=(?:"[^"]*"|[^\s">]+)/g,
          '',
        ),
    ]),
  );
}

describe('a shop whose vehicles are boats', () => {
  it('reads of boats, port and starboard on every page, and a platform alone may be so', {
    timeout: 240_000,
  }, async () => {
    const desk = await bench(files({ shop: boatWords }));
    const pages = await pagesOf(desk);
    // The names of data stand beside their words.
    for (const [path, words] of pages)
      expect(words.match(/.{20}\b(?:vehicles?|registration)\b(?!":).{20}/gi), path).toBeNull();
    const page = pages.get('guides/bow-thruster/index.html') ?? '';
    for (const words of [
      'Port side, then starboard side',
      'Port side shown',
      'Port side</span>',
      'Off the boat',
      'off the boat',
      'Hull number',
      'One for each side, the starboard one mirrored',
      'Drawn for the port side, reduced.',
      'Notch, starboard side, seen on the outside face',
      'The boat maker’s data',
      '(port)',
      'emove the port rail cap',
      'Refit the port rail cap',
      '\u00a0P</text>',
      '\u00a0S</text>',
    ])
      expect.soft(page, words).toContain(words);
    expect(page).toContain('"words":{"vehicle":"boat","left":"port","right":"starboard"}');
    expect(page.match(/.{20}\b(?:left|right) (?:side|rail|locker|bow).{20}/gi)).toBeNull();
    expect(pages.get('guides/bow-thruster/bow-thruster.html')).toContain('Port side, then starboard side');
    expect(pages.get('index.html')).toContain('Every boat');
    expect(pages.get('guides/bow-thruster/page-feet.css')).toContain('Hull number');

    await desk.change('shop.yaml', boatWords, '');
    await desk.change(
      'platforms/skerry.md',
      'day boat\n',
      `day boat\n${boatWords.replace('hull number', 'sail number')}`,
    );
    const again = await pagesOf(desk);
    expect(again.get('guides/bow-thruster/index.html')).toContain('Sail number');
    expect(again.get('platforms/skerry/index.html')).toContain('Boat platform');
    expect(again.get('index.html')).toContain('Every vehicle');
  });

  it('is told of its guides in its own words', async () => {
    const desk = await bench(files({ shop: boatWords }));
    await desk.change('bow-thruster/guide.md', '{#rail time', '{#rail side=right time');
    const { out } = await desk.check();
    expect(out).toContain(
      'the step is done on the starboard side, and the 2 rail screws are only on the port',
    );
    expect(out).toContain(
      'this picture shows the port side, and its step is done on the starboard side only',
    );
  });
});

describe('words that cannot be used', () => {
  it.each([
    ['words: {left: port}\n', 'both left and right, or neither'],
    ['words: {left: starboard side, right: starboard}\n', 'begin with different letters'],
    ['words: {ship: boat}\n', 'ship'],
  ])('%s', async (words, told) => {
    const desk = await bench(files({ shop: words }));
    expect((await desk.check()).out).toContain(told);
  });
});
