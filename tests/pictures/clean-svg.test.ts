import rehypeStringify from 'rehype-stringify';
import sharp from 'sharp';
import { unified } from 'unified';
import { describe, expect, test } from 'vitest';
import { type CleanOptions, cleanSvg } from '../../src/pictures/svg/clean-svg.ts';

function cleaned(shapes: string, options: Partial<CleanOptions> = {}, root = 'viewBox="0 0 100 60"'): string {
  const text = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${root}>${shapes}</svg>`;
  const outcome = cleanSvg(text, { file: 'd.svg', prefix: '', ...options });
  if (!outcome.ok) throw new Error(outcome.problems.map(({ message }) => message).join('\n'));
  const page = unified().use(rehypeStringify, { closeSelfClosing: true, closeEmptyElements: true });
  return page
    .stringify({ type: 'root', children: [outcome.value.element] })
    .replace(/^<svg[^>]*>|<\/svg>$/g, '');
}

test('plain shapes pass as they are', () => {
  const shapes =
    '<g transform="rotate(10 5 5)" stroke-width="2"><path d="M0 0L10 10" fill="none" stroke="#000" /><rect x="1" y="2" width="3" height="4" /></g>';
  expect(cleaned(shapes)).toBe(shapes);
});

test('a style attribute becomes attributes, a class and an editor’s own marks go', () => {
  expect(cleaned('<path class="a" data-x="1" style="fill:red;stroke-width:2px;-x-note:1" d="M0 0"/>')).toBe(
    '<path d="M0 0" fill="red" stroke-width="2px" />',
  );
});

test('what nobody sees goes without a word', () => {
  const noise =
    '<metadata><a:b xmlns:a="urn:x">text</a:b></metadata><!-- made by hand --><n:view xmlns:n="urn:n"><g/></n:view><desc>d</desc>';
  expect(cleaned(`${noise}<circle r="3"/>`)).toBe('<circle r="3" />');
});

test('ids and all that points at them get the prefix', () => {
  const shapes =
    '<defs><linearGradient id="g"><stop offset="0" /></linearGradient><clipPath id="c"><path id="p" d="M0 0" /></clipPath></defs><use href="#p" clip-path="url(#c)" fill="url(\'#g\') red" />';
  expect(cleaned(shapes, { prefix: 'k1-' })).toBe(
    '<defs><linearGradient id="k1-g"><stop offset="0" /></linearGradient><clipPath id="k1-c"><path id="k1-p" d="M0 0" /></clipPath></defs><use href="#k1-p" clip-path="url(#k1-c)" fill="url(#k1-g) red" />',
  );
});

test('the older xlink:href is read as href', () => {
  expect(cleaned('<path id="p" d="M0 0"/><use xlink:href="#p"/>')).toBe(
    '<path id="p" d="M0 0" /><use href="#p" />',
  );
});

test('text is kept and escaped', () => {
  expect(cleaned('<text x="1">a &lt; b <tspan>&amp; <![CDATA[<script>]]></tspan></text>')).toBe(
    '<text x="1">a &#x3C; b <tspan>&#x26; &#x3C;script></tspan></text>',
  );
});

describe('size', () => {
  function size(root: string, crop: CleanOptions['crop'] = null) {
    const outcome = cleanSvg(`<svg ${root}/>`, { file: 'd.svg', prefix: '', crop });
    if (!outcome.ok) return outcome.problems.map(({ message }) => message);
    const { width, height, element } = outcome.value;
    return [width, height, element.properties.viewBox];
  }

  test('comes from the viewBox, whatever width and height say', () => {
    expect(size('viewBox="-10,0 400 300" width="9mm" height="1%"')).toEqual([400, 300, '-10 0 400 300']);
  });

  test('comes from width and height where there is no viewBox', () => {
    expect(size('width="400px" height="300"')).toEqual([400, 300, '0 0 400 300']);
  });

  test('a crop is a smaller viewBox', () => {
    expect(size('viewBox="-10 0 400 300"', { left: 0.5, top: 0.25, width: 0.25, height: 0.5 })).toEqual([
      100,
      150,
      '190 75 100 150',
    ]);
  });

  test.each([
    '',
    'viewBox="0 0 0 300"',
    'viewBox="0 0 1e999 1"',
    'viewBox="0 0 5"',
    'width="10mm" height="5mm"',
  ])('is missing in <svg %s>', (root) => {
    expect(size(root)).toEqual(['d.svg has no size; its svg element needs a viewBox such as "0 0 400 300"']);
  });
});

test('a cleaned drawing looks like the original', async () => {
  const text = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 200 120" width="200" height="120">
    <defs><linearGradient id="g"><stop offset="0" style="stop-color:#fff"/><stop offset="1" stop-color="#246"/></linearGradient>
    <clipPath id="c"><circle cx="60" cy="60" r="40"/></clipPath>
    <marker id="m" viewBox="0 0 10 10" refX="8" refY="5" markerWidth="6" markerHeight="6" orient="auto"><path d="M0 0L10 5L0 10z"/></marker></defs>
    <rect width="200" height="120" fill="url(#g)"/><g clip-path="url(#c)"><path id="p" d="M0 60h200" style="stroke:#900;stroke-width:30;stroke-dasharray:6,3"/></g>
    <use href="#p" transform="translate(0 40) scale(.5)"/><line x1="120" y1="20" x2="180" y2="90" stroke="#000" marker-end="url(#m)"/>
    <polygon points="150,10 190,10 170,40" fill-opacity=".4"/></svg>`;
  const outcome = cleanSvg(text, { file: 'd.svg', prefix: 'x-' });
  if (!outcome.ok) throw new Error('not clean');
  outcome.value.element.properties.xmlns = 'http://www.w3.org/2000/svg';
  const after = unified()
    .use(rehypeStringify)
    .stringify({ type: 'root', children: [outcome.value.element] });
  const pixels = (svg: string) => sharp(Buffer.from(svg)).raw().toBuffer();
  expect(await pixels(after)).toEqual(await pixels(text));
});

test('of the two ways that a drawing shows, one is left: the way off, or the way back where it is turned', () => {
  const shapes =
    '<path d="M0 0" /><g id="way"><path d="M1 1" /></g><g><g id="way-back" style="display:none"><path d="M2 2" /></g></g>';
  expect(cleaned(shapes)).toBe('<path d="M0 0" /><g id="way"><path d="M1 1" /></g><g />');
  expect(cleaned(shapes, { turned: true, prefix: 'k-' })).toBe(
    '<path d="M0 0" /><g><g id="k-way-back"><path d="M2 2" /></g></g>',
  );
  const plain = '<g id="way"><path d="M1 1" /></g>';
  expect(cleaned(plain, { turned: true })).toBe(plain);
});
