import { describe, expect, it } from 'vitest';
import { guideJson } from '../../src/pages/guide/guide-json.ts';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import { noStore } from '../../src/store/store.ts';
import { exampleWorkspace } from '../example-workspace.ts';
import { guideHtml } from './render.ts';

const drawing = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 6"><path d="M0 0h9v6H0z"/></svg>';

const platform = `---
title: Example van
---

::part[Trim]{#trim picture=trim.svg alt="Long trim with a hooked end"}
::condition[Floor up]{#floor-up set="lift the floor" clear="lay the floor" picture=floor.svg alt="Floor, lifted"}
`;

const guide = (bracket: string, figure: string) => `## Parts {#parts}

::tool{#lever}
::kit[Bracket]{#bracket${bracket}}
::part{#trim}
::condition{#floor-up}
::fastener[Trim clip]{#clip type=push-clip holds=trim}

## Work {#work}

::step[Fit it]{#fit}

:set[floor-up]. With the :tool[lever], :remove[clip] and :remove[trim].
:fit[bracket]. :refit[trim], :refit[clip], and :clear[floor-up].

${figure}
`;

const shown = ' picture=bracket.svg alt="Bracket with a long and a short leg"';
const lifted = ':::figure[Where it is]{of=floor-up}\n- :mark[A]{at="50%,50%"} :condition[floor-up]\n:::\n';

async function read(bracket = shown, figure = lifted, files: { readonly [path: string]: string } = {}) {
  const { guides, shop, findings } = await inspect(
    memoryFiles(
      exampleWorkspace({
        'tools.yaml': 'lever: {name: Lever, picture: lever.svg}\n',
        'fasteners.yaml': 'push-clip: {name: Push clip, picture: clip.svg, alt: "Clip with a barbed stem"}\n',
        'platforms/example-van.md': platform,
        'example/guide.md': guide(bracket, figure),
        'lever.svg': drawing,
        'clip.svg': drawing,
        'platforms/trim.svg': drawing,
        'platforms/floor.svg': drawing,
        'example/bracket.svg': drawing,
        ...files,
      }),
    ),
    noStore,
  );
  const told = findings.filter(({ severity }) => severity === 'error');
  return { guides, shop, told: told.map(({ code, at, message }) => [code, at.file, message]) };
}

async function one(bracket?: string, figure?: string) {
  const { guides, shop, told } = await read(bracket, figure);
  const [inspected] = guides;
  if (!inspected) throw new Error(told.join('\n'));
  return { ...inspected, shop, told };
}

describe('the own picture of a thing', () => {
  it('stands beside its name, of the crib, the kinds of fastener, the platform and the guide', async () => {
    const { guide, job, shop, told } = await one();
    expect(told).toEqual([]);
    const html = guideHtml(guide, job, shop);
    const alts = Object.fromEntries(
      ['lever', 'bracket', 'trim', 'clip'].map((id) => {
        const row = new RegExp(`<tr id="item_${id}"[\\s\\S]*?</tr>`).exec(html)?.[0] ?? '';
        return [id, /<picture class="own">\s*<img [^>]*alt="([^"]*)"/.exec(row)?.[1]];
      }),
    );
    // The name stands beside it: a picture that is told by its name alone is not read out twice.
    expect(alts).toEqual({
      lever: '',
      bracket: 'Bracket with a long and a short leg',
      trim: 'Long trim with a hooked end',
      clip: 'Clip with a barbed stem',
    });
  });

  it('is told in the data, and counts in no fingerprint', async () => {
    const pictured = await one();
    const bare = await one('');
    const json = guideJson(pictured.guide, pictured.job, '');
    expect(json.items.find(({ id }) => id === 'bracket')?.picture).toEqual({
      file: 'example/bracket.svg',
      shows: 'Bracket with a long and a short leg',
    });
    expect(json.items.find(({ id }) => id === 'clip')?.picture).toBeNull();
    expect(pictured.job.fingerprint).toBe(bare.job.fingerprint);
  });

  it('that is not there is found where it is named, on the platform once', async () => {
    const lost = await read(' picture=bracket.png', lifted, { 'platforms/trim.svg': '' });
    expect(lost.told).toEqual([
      [
        'picture-missing',
        'example/guide.md',
        'there is no picture "bracket.png"; looked for example/bracket.png',
      ],
      ['picture-missing', 'platforms/example-van.md', expect.stringContaining('"trim.svg"')],
    ]);
    const unsafe = drawing.replace('<path', '<image href="https://example.org/x.png"/><path');
    const bad = await read(shown, lifted, { 'example/bracket.svg': unsafe });
    expect(bad.told.map(([code, file]) => [code, file])).toEqual([
      ['drawing-part-unsupported', 'example/guide.md'],
    ]);
  });

  it('is shown by a figure of it, with its words, or else the figure says what it lacks', async () => {
    const { guide, job, shop } = await one();
    expect(guideHtml(guide, job, shop)).toContain('alt="Floor, lifted"');
    const lacks = async (attributes: string) =>
      (await read(shown, `:::figure[It]{${attributes}}\n:::\n`)).told.map(
        ([code, , message]) => `${code}: ${message}`,
      );
    expect(await lacks('of=flor-up')).toEqual([
      'figure-unpictured: the platform declares no part and no state "flor-up"; with of= only such a one is shown, by its own picture',
    ]);
    expect(await lacks('of=trim src=bracket.svg alt="A bracket"')).toEqual([
      'attribute-value: a figure shows the picture of "src" or the one of "of"; take one of them out',
    ]);
    expect(await lacks('alt="A bracket"')).toEqual([
      'attribute-missing: this figure lacks "src": the path of the picture, as in `pictures/edge.jpg`',
    ]);
  });
});
