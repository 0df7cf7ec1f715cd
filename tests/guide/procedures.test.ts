import { describe, expect, it } from 'vitest';
import { inlinesOf, prosesOf } from '../../src/job/actions/walk.ts';
import { readBody, soundGuide, stepsIn } from './read.ts';

const coverOff = `---
title: Cover off
options:
  plugs: Lamps in the cover
---

::tool[Trim lever]{#lever}
::part{#cover}
::fastener[Clip]{#clip count=4 holds=cover}
::connector[Lamp plug]{#plug on=cover when=plugs}

## Any heading {#heading}

:::caution[Cold trim]
It cracks. Warm it.
:::

::step[Lift the clips]{#clips}

:remove[clip]{with=lever}.

::step[Lift the cover]{#lift when=plugs}

:disconnect[plug], then :remove[cover].
`;

describe('a placed procedure', () => {
  const place = (attributes: string) =>
    readBody(`## Strip {#strip}\n\n::procedure{of=cover-off ${attributes}}\n`, { 'cover-off': coverOff });

  it('brings its declarations and steps, and opens no section', () => {
    const { guide, findings } = place('options="plugs=fog"');
    expect(findings).toEqual([]);
    expect([...(guide?.items.keys() ?? [])]).toEqual(['lever', 'cover', 'clip', 'plug']);
    expect(guide?.sections.map(({ id, steps }) => [id, steps.map((step) => step.id)])).toEqual([
      ['strip', ['clips', 'lift']],
    ]);
  });

  it('keeps the message that guards its section, before its first step', () => {
    const { guide } = place('options="plugs=fog"');
    expect(guide?.sections[0]?.steps[0]?.blocks.map(({ type }) => type)).toEqual(['message', 'prose']);
  });

  it("asks about the guide's own options", () => {
    const { guide } = place('options="plugs=fog"');
    expect(guide?.items.get('plug')?.when?.value).toMatchObject({ kind: 'has', option: 'fog' });
    expect(guide?.sections[0]?.steps[1]?.when?.value).toMatchObject({ kind: 'has', option: 'fog' });
  });

  it('under a prefix renames what it brings, but not the tools of the shop', () => {
    const { guide } = place('options="plugs=fog" prefix=left');
    expect([...(guide?.items.keys() ?? [])]).toEqual(['lever', 'cover', 'left-clip', 'left-plug']);
    const actions = guide?.sections[0]?.steps.flatMap(({ blocks }) =>
      blocks.flatMap(prosesOf).flatMap((prose) => inlinesOf(prose).map(({ node }) => node.target.value)),
    );
    expect(actions).toEqual(['left-clip', 'left-plug', 'cover']);
    expect(guide?.items.get('left-clip')).toMatchObject({ holds: [{ value: 'cover' }] });
  });

  it('may stand under a condition, which narrows all that it brings', () => {
    const { guide } = place('options="plugs=fog" when="lamps is led"');
    expect(guide?.items.get('clip')?.when?.value).toMatchObject({ kind: 'is', option: 'lamps' });
    expect(guide?.sections[0]?.steps[1]?.when?.value).toMatchObject({ kind: 'and' });
  });

  it('leaves out steps, and what only they handle', () => {
    const { guide } = place('options="plugs=fog" except=lift');
    expect(stepsIn(guide ?? soundGuide('')).map(({ id }) => id)).toEqual(['clips']);
    expect(guide?.items.has('plug')).toBe(false);
    expect(guide?.items.has('clip')).toBe(true);
  });

  it.each([
    ['', 'procedure-option'],
    ['options="plugs=fgo"', 'procedure-option'],
    ['options="plugs=fog lamps=lamps"', 'procedure-option'],
    ['options="plugs=fog" except=lfit', 'procedure-step-unknown'],
  ])('with %j is told of', (attributes, code) => {
    expect(place(attributes).findings.map((one) => one.code)).toEqual([code]);
  });

  it('knows whence it came, through every procedure between', () => {
    const guide = soundGuide('## Strip {#strip}\n\n::procedure{of=outer}\n', {
      outer: '::procedure{of=inner}\n',
      inner: '::step[Look]{#look}\n\nLook.\n',
    });
    expect(stepsIn(guide)[0]?.origins).toMatchObject([
      { kind: 'procedure', procedure: 'outer', at: { file: 'example/guide.md' } },
      { kind: 'procedure', procedure: 'inner', at: { file: 'procedures/outer.md' } },
    ]);
  });

  it('is told of with every place between, where its own file is at fault', () => {
    const { findings } = readBody('## Strip {#strip}\n\n::procedure{of=outer}\n', {
      outer: '::procedure{of=inner}\n',
      inner: '::step[Look]{#look tiem="2 min"}\n\nLook.\n',
    });
    expect(findings).toMatchObject([
      {
        code: 'attribute-unknown',
        at: { file: 'procedures/inner.md' },
        notes: [
          { message: 'the procedure outer is placed here', at: { file: 'example/guide.md' } },
          { message: 'the procedure inner is placed here', at: { file: 'procedures/outer.md' } },
        ],
      },
    ]);
  });

  it('that leads back to itself is told of once', () => {
    const { findings } = readBody('## Strip {#strip}\n\n::procedure{of=a}\n', {
      a: '::procedure{of=b}\n',
      b: '::procedure{of=a}\n',
    });
    expect(findings.map(({ code, at }) => [code, at.file])).toEqual([['procedure-loop', 'procedures/b.md']]);
  });

  it.each([
    [
      'steps',
      Array.from({ length: 100 }, (_, number) => `::step[Look]{#look-${number}}\n\nLook.\n`).join('\n'),
      2,
    ],
    ['characters', `::step[Look]{#look}\n\nLook ${'well '.repeat(30_000)}`, 2],
  ])('is told of once where with it the guide has too many %s, and is not placed', (what, text, fit) => {
    const places = ['a', 'b', 'c', 'd'].map((prefix) => `::procedure{of=long prefix=${prefix}}`);
    const { guide, findings } = readBody(`## Strip {#strip}\n\n${places.join('\n\n')}\n`, { long: text });
    expect(findings.map(({ code, message }) => [code, message.includes(what)])).toEqual([
      ['guide-too-long', true],
    ]);
    expect(guide && stepsIn(guide).length).toBe(fit * text.split('::step').length - fit);
  });
});
