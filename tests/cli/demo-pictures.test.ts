import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { repository } from '../driver.ts';

const demo = join(repository, 'guides');
const text = (path: string) => readFileSync(join(demo, path), 'utf8');

/** The texts of the demo that have steps: guides, and the procedures that they place. */
const texts = [
  ...readdirSync(demo).flatMap((name) =>
    existsSync(join(demo, name, 'guide.md')) ? [`${name}/guide.md`] : [],
  ),
  ...readdirSync(join(demo, 'procedures')).flatMap((name) =>
    name.endsWith('.md') ? [`procedures/${name}`] : [],
  ),
];

/** A step, as far as it is written; a refit that is worked out shows the pictures of the step that it undoes. */
interface WrittenStep {
  readonly id: string;
  readonly words: string;
}

const steps = texts.flatMap((path): WrittenStep[] =>
  text(path)
    .split(/^(?=::step\[|## )/m)
    .flatMap((part) => {
      const id = /^::step\[[^\]]*\]\{#([a-z0-9-]+)/.exec(part)?.[1];
      return id === undefined ? [] : [{ id: `${path}#${id}`, words: part }];
    }),
);

/** What a step does with its hands; what it sets, clears or measures alone is no work on a part. */
const handles =
  /(?<![\w:]):(?!set\b|clear\b|measure\b|tool\b|kit\b|part\b|where\b|mark\b|wear\b)[a-z-]+\[[a-z0-9-]+\]/;

const named = (file: string) =>
  Object.entries(parse(text(file)) as Record<string, { readonly picture?: string }>).map(
    ([id, { picture = '' }]) => [id, picture] as const,
  );

describe('the pictures of the demo', () => {
  it('show at least nine in ten of the steps that handle something', () => {
    const handling = steps.filter(({ words }) => handles.test(words.replace(/:::figure[\s\S]*?^:::$/gm, '')));
    const bare = handling.filter(({ words }) => !/^:::figure\[/m.test(words)).map(({ id }) => id);
    expect(handling.length).toBeGreaterThan(50);
    expect(bare.length / handling.length, bare.join(', ')).toBeLessThanOrEqual(0.1);
  });

  it('show each tool and each kind of fastener, none by the picture of another', () => {
    const all = [...named('tools.yaml'), ...named('fasteners.yaml')];
    expect(all.filter(([, path]) => !existsSync(join(demo, path))).map(([id]) => id)).toEqual([]);
    const drawn = all.map(([, path]) => text(path));
    expect(new Set(drawn).size).toBe(all.length);
    // A page of the crib is a small thing: its picture weighs less than a line of photographs.
    expect(Math.max(...drawn.map((svg) => svg.length))).toBeLessThan(3000);
  });

  it('are called a rendering where they are one, twelve and more of them with marks', async () => {
    const shown = texts.flatMap((path) =>
      [...text(path).matchAll(/^:::figure\[[^\n]*src=(\S+\.jpg) alt="([^"]*)"[\s\S]*?^:::$/gm)].map(
        ([figure, , alt = '']) => ({ figure, alt }),
      ),
    );
    expect(shown.length).toBeGreaterThanOrEqual(12);
    expect(shown.filter(({ alt }) => !/^Rendering of /.test(alt))).toEqual([]);
    expect(shown.filter(({ figure }) => !/^- :mark\[/m.test(figure))).toEqual([]);
    expect(shown.filter(({ figure }) => / crop="/.test(figure)).length).toBeGreaterThan(3);
    expect(texts.filter((path) => /alt="[^"]*\bphotograph/i.test(text(path)))).toEqual([]);
  });

  it('come turned, with a note which way is up, as a phone stores them', async () => {
    const photographs = texts.flatMap((path) =>
      [...text(path).matchAll(/src=(pictures\/\S+\.jpg)/g)].map(([, src = '']) => join(path, '..', src)),
    );
    const turned = await Promise.all(
      photographs.map(async (path) => (await sharp(join(demo, path)).metadata()).orientation ?? 1),
    );
    expect(turned.filter((orientation) => orientation === 1)).toEqual([]);
  });
});
