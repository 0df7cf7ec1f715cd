import { describe, expect, it } from 'vitest';
import { plainText } from '../../src/html/prose.ts';
import type { ContainerDirective, LeafDirective, RawProse, TextDirective } from '../../src/syntax/tree.ts';
import { place, read, written } from './reading.ts';

/** The words of prose, with a directive by its label. */
const words = (prose: RawProse) => plainText<TextDirective>(prose, (directive) => directive.labelText);

/** All text of a document's prose and headings. */
const textOf = (text: string) =>
  read(text)
    .document.nodes.map((node) => (node.type === 'directive' ? '' : words(node.content)))
    .join('\n');

function first<T>(list: readonly T[]): T {
  const [one] = list;
  if (one === undefined) throw new Error('nothing was read');
  return one;
}

function textDirective(prose: RawProse): TextDirective {
  const inside = prose.flatMap((node) => (node.type === 'element' ? node.children : [node]));
  return first(inside.filter((node) => node.type === 'directive'));
}

const proseOf = (text: string) =>
  read(text).document.nodes.flatMap((node) => (node.type === 'prose' ? node.content : []));

describe('what a document is made of', () => {
  it('gives the front matter as the author wrote it, with its place', () => {
    const text = '---\r\ntitle: Cradle\r\nrevision: 3\r\n---\r\n\r\nText.\r\n';
    const { frontMatter } = read(text).document;
    expect(frontMatter?.value).toBe('title: Cradle\r\nrevision: 3');
    expect(frontMatter && written(text, frontMatter.at)).toBe(`"${frontMatter?.value}"`);
    expect(frontMatter && place(text, frontMatter.at)).toBe('2:1');
  });

  it('takes empty front matter, and none', () => {
    expect(read('---\n---\n').document.frontMatter?.value).toBe('');
    expect(read('Text.').document.frontMatter).toBeNull();
    expect(read('').document.nodes).toEqual([]);
  });

  it('reads the id off a heading', () => {
    const text = '## Strip *down* {#strip-down}';
    const heading = first(read(text).document.nodes);
    expect(heading).toMatchObject({
      type: 'heading',
      depth: 2,
      text: 'Strip down',
      id: { value: 'strip-down' },
    });
    expect(heading.type === 'heading' && heading.id && written(text, heading.id.at)).toBe('"strip-down"');
  });

  it('leaves an escaped brace in a heading', () => {
    expect(first(read('## A \\{#b}').document.nodes)).toMatchObject({ text: 'A {#b}', id: null });
  });

  it('reads a leaf with every form of attribute, each at its place', () => {
    const text =
      '::tool[Torque wrench, *new*]{#torque-60 range="10..60 N·m" count=2 as=\'big one\' temporary note=""}';
    const leaf = first(read(text).document.nodes) as LeafDirective;
    expect(leaf).toMatchObject({ form: 'leaf', name: 'tool', labelText: 'Torque wrench, new' });
    const seen = leaf.attributes.map(({ name, value, nameAt, valueAt }) => [
      name,
      value,
      written(text, nameAt),
      written(text, valueAt),
    ]);
    expect(seen).toEqual([
      ['id', 'torque-60', '"#torque-60"', '"torque-60"'],
      ['range', '10..60 N·m', '"range"', '"10..60 N·m"'],
      ['count', '2', '"count"', '"2"'],
      ['as', 'big one', '"as"', '"big one"'],
      ['temporary', null, '"temporary"', '"temporary"'],
      ['note', '', '"note"', '""'],
    ]);
    expect([leaf.at, leaf.nameAt, leaf.labelAt].map((at) => written(text, at))).toEqual([
      `"${text}"`,
      '"tool"',
      '"Torque wrench, *new*"',
    ]);
  });

  it('keeps repeated attributes and odd names apart', () => {
    const leaf = first(read('::tool{a=1 a=2 __proto__=x constructor=y}').document.nodes) as LeafDirective;
    expect(leaf.attributes.map(({ name, value }) => [name, value])).toEqual([
      ['a', '1'],
      ['a', '2'],
      ['__proto__', 'x'],
      ['constructor', 'y'],
    ]);
    expect(leaf.label).toBeNull();
  });

  it('reads a container with its label, its opening line and its content', () => {
    const text =
      ':::cut-template[Notch]{#notch panel=cover}\n::datum[Edge]{axis=vertical}\n\nWords.\n:::\n\nAfter.';
    const [node, after] = read(text).document.nodes;
    const container = node as ContainerDirective;
    expect(container).toMatchObject({ form: 'container', name: 'cut-template', labelText: 'Notch' });
    expect(written(text, container.openingAt)).toBe('":::cut-template[Notch]{#notch panel=cover}"');
    expect(text.slice(container.at.start, container.at.end)).toMatch(/:::$/);
    expect(container.children.map(({ type }) => type)).toEqual(['directive', 'prose']);
    expect(after?.type).toBe('prose');
  });

  it('tells an empty label from none', () => {
    expect((first(read('::tool[]').document.nodes) as LeafDirective).label).toEqual([]);
    expect((first(read('::tool').document.nodes) as LeafDirective).label).toBeNull();
  });

  it('finds directives inside the label of another', () => {
    const where = textDirective(proseOf('Then :where[reach behind and :disconnect[fog-plug]]{when=fog}.'));
    expect(where.labelText).toBe('reach behind and fog-plug');
    expect(textDirective(where.label ?? [])).toMatchObject({ name: 'disconnect', labelText: 'fog-plug' });
  });

  it("takes a table's own escape off a value", () => {
    const text = '| a |\n|---|\n| :tool[lever]{as="x \\| y"} |';
    const found = JSON.stringify(proseOf(text));
    expect(found).toContain('"value":"x | y"');
    expect(read(text).findings).toEqual([]);
  });

  it('keeps links, pictures and definitions, with the place of each', () => {
    const text = '[the drawing][d] and ![Edge at 10:30](edge.svg "t")\n\n[d]: https://example.com/d';
    const inside = proseOf(text).flatMap((node) => (node.type === 'element' ? node.children : []));
    const elements = inside.flatMap((node) => (node.type === 'element' ? [node] : []));
    expect(elements.map(({ tagName, properties }) => [tagName, properties])).toEqual([
      ['a', { href: 'https://example.com/d' }],
      ['img', { src: 'edge.svg', alt: 'Edge at 10:30', title: 't' }],
    ]);
    expect(elements.map(({ at }) => at && written(text, at))).toEqual([
      '"[the drawing][d]"',
      '"![Edge at 10:30](edge.svg "t")"',
    ]);
  });

  it('keeps footnotes apart, and joins them with their marks', () => {
    const { nodes, footnotes } = read('Ratio 1:12[^note].\n\n[^note]: See :tool[trim-lever].').document;
    expect(nodes).toHaveLength(1);
    expect(JSON.stringify(nodes)).toContain('"href":"#footnote-fn-note"');
    expect(JSON.stringify(footnotes)).toContain('"id":"footnote-fn-note"');
    expect(JSON.stringify(footnotes)).toContain('"name":"tool"');
  });

  it('reads task lists and strikethrough, and no bare address', () => {
    expect(JSON.stringify(proseOf('- [x] done ~~not~~ ~5 mm~'))).toMatch(/checkbox.*"del"/);
    expect(JSON.stringify(proseOf('- [x] done ~~not~~ ~5 mm~'))).toContain('~5 mm~');
    expect(JSON.stringify(proseOf('See www.example.com and a@example.com'))).not.toContain('"a"');
  });

  it('never keeps an address that runs code', () => {
    const { document, findings } = read('[x](javascript:alert(1)) <JAVASCRIPT:y> [z](data:text/html,hi)');
    expect(JSON.stringify(document)).not.toContain('href');
    expect(findings.map(({ code }) => code)).toEqual(['link-unsafe', 'link-unsafe', 'link-unsafe']);
  });
});

describe('ordinary colons', () => {
  // What a technician types without thinking of directives.
  const typed = [
    'At 10:30',
    'ratio 3:1',
    'Note:see',
    'Left:remove the clip',
    'localhost:8080',
    ':-)',
    ':smile',
    '(:x)',
    'M6:1.0',
  ];
  it.each(typed)('%s prints as typed, everywhere', (words) => {
    expect(textOf(`${words} and on.`)).toBe(`${words} and on.`);
    expect(textOf(`## ${words} {#a}`)).toBe(words);
    expect(textOf(`| ${words} |\n|---|`)).toContain(words);
    expect(textOf(`> *${words}*`)).toContain(words);
    expect(JSON.stringify(proseOf(`![${words}](a.svg)`))).toContain(`"alt":"${words}"`);
    expect((first(read(`::tool[${words}]`).document.nodes) as LeafDirective).labelText).toBe(words);
  });

  it.each(['Left:remove[clip]', '3:tool[lever]{a=1}', 'é:tool[x]'])(
    'a colon after a letter or digit is text: %s',
    (text) => {
      expect(textOf(text)).toBe(text);
      expect(read(text).findings).toEqual([]);
    },
  );

  it('a directive after a sign is still one', () => {
    expect(textDirective(proseOf('(:tool[lever])')).name).toBe('tool');
  });
});

describe('line and column', () => {
  it.each([
    ['Unix line endings', 'A\n\nB :tool[x]', '3:3'],
    ['Windows line endings', 'A\r\n\r\nB :tool[x]', '3:3'],
    ['old line endings', 'A\r\rB :tool[x]', '3:3'],
    ['a tab, which is one column', 'A\n\n-\tB :tool[x]', '3:5'],
    ['a quotation over lines', '> A\n> B :tool[x]', '2:5'],
    ['letters outside the basic plane, as UTF-16 counts', '🔧 :tool[x]', '1:4'],
    ['a mark left over from another file', '\uFEFFA :tool[x]', '1:4'],
  ])('hold with %s', (_, text, expected) => {
    const found = JSON.stringify(read(text).document, (_key, value) =>
      value?.type === 'directive' ? { found: place(text, value.at), text: written(text, value.at) } : value,
    );
    expect(found).toContain(`"found":"${expected}"`);
    expect(found).toContain('":tool[x]\\""');
  });
});
