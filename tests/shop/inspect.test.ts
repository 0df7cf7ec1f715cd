import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import { lineColumn } from '../../src/source/source-file.ts';
import { exampleWorkspace } from '../example-workspace.ts';
import { runs } from '../samples.ts';

const base = exampleWorkspace('::step[Look around]{#look}\n\nLook behind the edge.\n');
const guide = base['example/guide.md'] ?? '';
const without = (text: string, line: string) => text.replace(line, '');

/** What is found in the ordinary workspace with some files changed or added, one line each. */
async function found(files: { readonly [path: string]: string }) {
  const inspection = await inspect(memoryFiles({ ...base, ...files }));
  const lines = inspection.findings.map(({ at, code }) => {
    const source = inspection.sources.get(at.file);
    const place = source ? lineColumn(source, at.start) : null;
    return `${at.file}:${place?.line ?? 0} ${code}`;
  });
  return { lines, sound: [...inspection.soundGuides].sort(), inspection };
}

describe('sound guides', () => {
  it('are those without an error of their own', async () => {
    const { sound, inspection } = await found({
      'bad/guide.md': guide.replace('Look behind', 'Look with the :tool[lamp] behind'),
    });
    expect(sound).toEqual(['example']);
    expect(inspection.guides.map(({ guide }) => guide.id)).toEqual(['bad', 'example']);
  });

  it('are not touched by the fault of another platform', async () => {
    const { sound, lines } = await found({
      'platforms/lorry.md': '---\ntitle: [Lorry]\n---\n\nA lorry.\n',
      'other/guide.md': guide.replace('platform: example-van', 'platform: lorry'),
    });
    expect(lines).toEqual(['platforms/lorry.md:2 yaml-wrong-value']);
    expect(sound).toEqual(['example']);
  });

  it.each([
    ['shop.yaml', 'name: A\ncrew: none\n'],
    ['tools.yaml', 'lamp: {name: Lamp\n'],
    ['tools.yaml', 'lamp: {name: Lamp}\nlamp: {name: Lamp}\n'],
    ['fasteners.yaml', '\n'],
  ])('are none where %s has an error that belongs to no entry of a list: %j', async (file, text) => {
    const { sound, inspection } = await found({ [file]: text });
    expect(sound).toEqual([]);
    expect(inspection.brokenForAll).toEqual([file]);
  });

  it('are those that use no entry of a list with an error', async () => {
    const asking = guide
      .replace(
        '::none{of=tools}',
        '::tool{#lamp}\n::part[Lid]{#lid}\n::fastener[Clip]{#clip type=clip holds=lid}',
      )
      .replace('Look behind', 'Shine the :tool[lamp] behind the :part[lid] and its :fastener[clip], behind');
    const lists = (lamp: string, clip: string) => ({
      'tools.yaml': `lamp: ${lamp}\nsocket: {name: Socket, drive: hex 7}\n`,
      'fasteners.yaml': `clip: ${clip}\nscrew: {name: Screw}\n`,
      'asking/guide.md': asking,
    });
    const good = ['{name: Lamp}', '{name: Clip}'] as const;
    expect(await found(lists(...good))).toMatchObject({ lines: [], sound: ['asking', 'example'] });
    for (const lamp of ['{name: Lamp, drive: 13}', '{nme: Lamp}', 'Lamp', '{name: Lamp, range: []}']) {
      const { lines, sound } = await found(lists(lamp, good[1]));
      expect(lines.map((line) => line.split(' ')[0])).toEqual(['tools.yaml:1']);
      expect(sound).toEqual(['example']);
    }
    const { lines, sound } = await found(lists(good[0], '{name: Clip, drive: 9}'));
    expect(lines).toEqual(['fasteners.yaml:1 attribute-value']);
    expect(sound).toEqual(['example']);
  });

  it('are not touched by an entry whose id is spoilt, unless they ask for it', async () => {
    const { lines, sound } = await found({
      'tools.yaml': 'Work Lamp: {name: Lamp}\n',
      'asking/guide.md': guide
        .replace('::none{of=tools}', '::tool{#work-lamp}')
        .replace('Look behind', 'Shine the :tool[work-lamp] behind'),
    });
    expect(lines).toEqual(['tools.yaml:1 attribute-value']);
    expect(sound).toEqual(['example']);
  });

  it('may have warnings', async () => {
    const { sound, lines } = await found({
      'example/guide.md': guide.replace('::none{of=tools}', '::tool[Lamp]{#lamp}'),
    });
    expect(lines).toEqual(['example/guide.md:9 item-unused']);
    expect(sound).toEqual(['example']);
  });
});

it('tells the fault of a shared procedure once, however many guides place it', async () => {
  const placing = guide.replace(
    '::step[Look around]{#look}',
    '::procedure{of=look}\n\n::step[Look around]{#look}',
  );
  const { lines } = await found({
    'procedures/look.md':
      '---\ntitle: Look\n---\n\n::step[Look twice]{#twice}\n\nLook with the :tool[lamp].\n',
    'example/guide.md': placing,
    'other/guide.md': placing,
  });
  expect(lines).toEqual(['procedures/look.md:7 tool-undeclared']);
});

describe('guides that are not looked for', () => {
  it.each([
    ['guide.md', 'a guide stands in a folder of its own, whose name is its id'],
    ['front/cradle/guide.md', 'this guide is not read; a guide stands in a folder right under the workspace'],
    ['platforms/guide.md', 'this guide is not read; a guide stands in a folder right under the workspace'],
    ['cradle/Guide.md', 'this guide is not read; its file is named guide.md, in small letters'],
    [
      'Lamp Cradle/guide.md',
      '"Lamp Cradle" is no id; name the folder with small letters, digits and hyphens',
    ],
  ])('%s', async (path, message) => {
    const { inspection } = await found({ [path]: guide });
    const [first] = inspection.findings.filter(({ code }) => code === 'guide-misplaced');
    expect(first?.at.file).toBe(path);
    expect(first?.message).toBe(message);
  });
});

describe('links', () => {
  const linked = (link: string) =>
    found({
      'other/guide.md': guide,
      'a b/notes.pdf': 'x',
      'example/guide.md': `${guide}\nSee [there](${link}).\n`,
    });

  it.each([
    '#look',
    '#work',
    '../other/guide.md',
    '../other/guide.md#look',
    '../platforms/example-van.md',
    '../a%20b/notes.pdf',
    '../other/guide.md?print#look',
    'https://guides.example/x',
    'mailto:a@b.example',
    'tel:123',
  ])('to %s are good', async (link) => {
    expect((await linked(link)).lines).toEqual([]);
  });

  it.each([
    ['#lok', 'anchor-missing'],
    ['../other/guide.md#lok', 'anchor-missing'],
    ['../platforms/example-van.md#engine', 'anchor-missing'],
    ['../othr/guide.md', 'link-missing'],
    ['../other/', 'link-missing'],
    ['../../../etc/passwd', 'link-missing'],
    ['/guides/other', 'link-missing'],
    ['//guides.example/x', 'link-missing'],
  ])('to %s are %s', async (link, code) => {
    expect((await linked(link)).lines).toEqual([`example/guide.md:20 ${code}`]);
  });

  it('within footnotes and back are good', async () => {
    const text = `${guide}\nLook twice.[^why]\n\n[^why]: Because of [the edge](#look).\n`;
    expect((await found({ 'example/guide.md': text })).lines).toEqual([]);
  });
});

it('holds platforms to the same rules of links and pictures', async () => {
  const { lines } = await found({
    'platforms/example-van.md': '---\ntitle: Example van\n---\n\n![](van.svg)\n\nSee [there](#there).\n',
  });
  expect(lines).toEqual([
    'platforms/example-van.md:5 alt-missing',
    'platforms/example-van.md:5 picture-missing',
    'platforms/example-van.md:7 anchor-missing',
  ]);
});

it('says of a silent list that it is silent, once', async () => {
  const silent = without(without(guide, '::none{of=wear}\n'), '::none{of=kit}\n');
  expect((await found({ 'example/guide.md': silent })).lines).toEqual([
    'example/guide.md:2 none-missing',
    'example/guide.md:2 none-missing',
  ]);
});

describe('whatever an author writes', () => {
  const pieces = fc.constantFrom(
    '::step[Look]{#look}',
    ':::note',
    ':::',
    '::tool{#a}',
    '{',
    '}',
    '[',
    ']',
    ':tool[a]',
    '---',
    '\n',
    '\n\n',
    '- ',
    '"',
    '`',
    'when=fog',
    ':where[x]{when=fog}',
    '::reverse{of=look}',
    ':remove[a]',
    '# H {#h}',
    '|a|b|',
    '\t',
    '\r\n',
    '&x *x',
    'title: a',
    '\u0000',
    '\ud800',
    '🔧',
  );
  const text = fc
    .array(fc.oneof(pieces, fc.string({ maxLength: 8 })), { maxLength: 40 })
    .map((list) => list.join(''));

  it('ends in findings with a place in a file of the workspace', async () => {
    await fc.assert(
      fc.asyncProperty(text, text, text, async (body, yaml, whole) => {
        const files = {
          ...base,
          'example/guide.md': `${guide}\n${body}`,
          'tools.yaml': yaml,
          'other/guide.md': whole,
        };
        const { findings, sources } = await inspect(memoryFiles(files));
        for (const { at, message, notes } of findings) {
          expect(message).not.toBe('');
          for (const span of [at, ...notes.flatMap((note) => note.at ?? [])]) {
            expect(Object.keys(files)).toContain(span.file);
            expect(span.start).toBeLessThanOrEqual(span.end);
            expect(span.end).toBeLessThanOrEqual(sources.get(span.file)?.text.length ?? 0);
          }
        }
      }),
      runs(40, 150),
    );
  }, 240_000);
});
