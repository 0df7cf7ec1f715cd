import { describe, expect, it } from 'vitest';
import { computeJob } from '../../src/job/index.ts';
import type { Guide } from '../../src/model/guide.ts';
import { readBody } from './read.ts';

const declarations = `::tool[Driver]{#driver}
::part{#cover}
::part[Flap]{#flap covers=cover}
::fastener[Screw]{#screw count=4 holds=cover with=driver}
::fastener[Clip]{#clip holds=flap}
::connector[Plug]{#plug on=cover}
`;
const steps = [
  ['flap-off', ':remove[clip] and :remove[flap].'],
  ['screws', ':remove[screw].'],
  ['plugs', ':disconnect[plug].'],
  ['lift', ':remove[cover].'],
] as const;
type Name = (typeof steps)[number][0];

const written = (some: readonly Name[]) =>
  steps.flatMap(([id, text]) => (some.includes(id) ? [`::step[${id}]{#${id}}\n\n${text}\n`] : [])).join('\n');
const all = steps.map(([id]) => id);
const procedures = { 'cover-off': `${declarations}\n${written(all)}` };
const subsets = Array.from({ length: 2 ** all.length }, (_, bits) =>
  all.filter((_, bit) => (bits >> bit) & 1),
);

/** What the dry run says, whatever the prefix: kind, things, state. */
function verdict(guide: Guide | null): readonly string[] {
  if (!guide) throw new Error('the guide cannot be read');
  const words = computeJob(guide).violations.map((one) =>
    ['kind', 'item', 'by', 'part', 'state']
      .flatMap((key) => String((one as unknown as { readonly [key: string]: unknown })[key] ?? ''))
      .map((word) => word.replace(/^p-/, ''))
      .join(' '),
  );
  return [...words].sort();
}

function placed(attributes: string, more = ''): ReturnType<typeof readBody> {
  return readBody(`## Strip {#strip}\n\n::procedure{of=cover-off #place ${attributes}}\n${more}`, procedures);
}

describe('part of a procedure gives the verdict of the same steps written out', () => {
  const refit = '\n## Refit {#refit}\n\n::reverse{of=strip}\n';
  it.each(subsets.filter((some) => some.length > 0).map((some) => [some.join(' '), some] as const))(
    '%s',
    (_, some) => {
      const rest = all.filter((id) => !some.includes(id));
      for (const back of ['', refit]) {
        const byHand = verdict(
          readBody(`## Strip {#strip}\n\n${declarations}\n${written(some)}${back}`).guide,
        );
        const ways = [`only="${some.join(' ')}"`, ...(rest.length > 0 ? [`except="${rest.join(' ')}"`] : [])];
        for (const way of ways) {
          for (const prefix of ['', ' prefix=p']) {
            const { guide, findings } = placed(way + prefix, back);
            expect(findings).toEqual([]);
            expect(verdict(guide), way + prefix).toEqual(byHand);
          }
        }
      }
    },
  );
});

describe('a placement', () => {
  it('leaves to the host what it leaves out', () => {
    const { guide, findings } = placed(
      'except=screws',
      '\n## Refit {#refit}\n\n::reverse{of=place except="flap-off"}\n\n::step[Flap]{#on}\n\n:refit[flap], :refit[clip].\n',
    );
    expect(findings).toEqual([]);
    expect(verdict(guide)).toEqual(['still-held cover screw  ']);
    const { guide: whole } = readBody(
      `## Before {#before}\n\n::step[Screws]{#own}\n\n:remove[screw].\n\n## Strip {#strip}\n\n::procedure{of=cover-off except=screws}\n\n## Refit {#refit}\n\n::reverse{of=strip}\n\n::step[Screws]{#back}\n\n:refit[screw].\n`,
      procedures,
    );
    expect(verdict(whole)).toEqual([]);
  });

  it('may bring in two halves what it brings whole', () => {
    const { guide, findings } = readBody(
      '## A {#a}\n\n::procedure{of=cover-off only="flap-off screws" #one}\n\n## B {#b}\n\n::procedure{of=cover-off only="plugs lift" #two}\n\n## Refit {#refit}\n\n::reverse{of=b}\n\n::reverse{of=a}\n',
      procedures,
    );
    expect(findings).toEqual([]);
    expect(verdict(guide)).toEqual([]);
  });

  it('of the same steps is told once, at the second', () => {
    const { findings } = readBody(
      '## A {#a}\n\n::procedure{of=cover-off}\n\n## B {#b}\n\n::procedure{of=cover-off}\n',
      procedures,
    );
    expect(findings.map(({ code }) => code)).toEqual(['procedure-placed-twice']);
  });

  it('under a prefix handles the part of the platform, which is one', () => {
    const { guide } = readBody(
      '## A {#a}\n\n::procedure{of=cover-off prefix=a}\n\n## B {#b}\n\n::procedure{of=cover-off prefix=b}\n',
      procedures,
    );
    expect(verdict(guide)).toContain('wrong-state cover   off');
  });
});
