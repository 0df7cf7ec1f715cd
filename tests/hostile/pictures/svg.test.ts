import fc from 'fast-check';
import rehypeStringify from 'rehype-stringify';
import { unified } from 'unified';
import { describe, expect, test } from 'vitest';
import { inspectPicture } from '../../../src/pictures/inspect.ts';
import { cleanSvg } from '../../../src/pictures/svg/clean-svg.ts';
import { runs } from '../../samples.ts';

const head =
  '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 9 9">';

function codes(text: string): string[] {
  const outcome = cleanSvg(text, { file: 'd.svg', prefix: 'p-' });
  return outcome.ok ? [] : [...new Set(outcome.problems.map(({ code }) => code))];
}

describe.each([
  ['drawing-unsafe', '<script>alert(1)</script>'],
  ['drawing-unsafe', '<g><script href="https://example.org/x.js"/></g>'],
  ['drawing-unsafe', '<path onload="alert(1)" d="M0 0"/>'],
  ['drawing-unsafe', '<path ONCLICK="alert(1)" d="M0 0"/>'],
  [
    'drawing-unsafe',
    '<foreignObject><body xmlns="http://www.w3.org/1999/xhtml"><script/></body></foreignObject>',
  ],
  ['drawing-unsafe', '<x:script xmlns:x="http://www.w3.org/2000/svg">alert(1)</x:script>'],
  ['drawing-unsafe', '<h:iframe xmlns:h="http://www.w3.org/1999/xhtml" src="javascript:alert(1)"/>'],
  ['drawing-unsafe', '<use href="javascript:alert(1)"/>'],
  ['drawing-unsafe', '<use xlink:href=" java&#10;script:alert(1)"/>'.replace('&#10;', '')],
  ['drawing-unsafe', '<path fill="u\\72l(https://example.org/a)" d="M0 0"/>'],
  ['drawing-unsafe', '<path fill="expression(alert(1))" d="M0 0"/>'],
  ['drawing-unsafe', '<path stroke="var(--page-colour)" d="M0 0"/>'],
  ['drawing-reaches-outside', '<use href="https://example.org/a.svg#b"/>'],
  ['drawing-reaches-outside', '<use xlink:href="other.svg#b"/>'],
  ['drawing-reaches-outside', '<use href="data:image/svg+xml;base64,AAAA#b"/>'],
  ['drawing-reaches-outside', '<path fill="url(https://example.org/a.svg#g)" d="M0 0"/>'],
  ['drawing-reaches-outside', '<path fill="url( //example.org/a#g )" d="M0 0"/>'],
  ['drawing-reaches-outside', '<path style="fill:url(other.svg#g)" d="M0 0"/>'],
  ['drawing-reaches-outside', '<path style="background:url(https://example.org/a.png)" d="M0 0"/>'],
  ['drawing-reaches-outside', '<path fill="url(#absent)" d="M0 0"/>'],
  ['drawing-reaches-outside', '<use href="#absent"/>'],
  ['drawing-part-unsupported', '<style>@import "https://example.org/a.css";</style>'],
  ['drawing-part-unsupported', '<image href="https://example.org/a.png" width="9" height="9"/>'],
  ['drawing-part-unsupported', '<a href="javascript:alert(1)"><path d="M0 0"/></a>'],
  ['drawing-part-unsupported', '<path d="M0 0"><animate attributeName="d"/></path>'],
  [
    'drawing-part-unsupported',
    '<use href="#p"><set attributeName="href" to="javascript:alert(1)"/></use><path id="p" d="M0 0"/>',
  ],
  ['drawing-part-unsupported', '<path filter="url(#f)" d="M0 0"/>'],
  ['drawing-part-unsupported', '<svg viewBox="0 0 1 1"/>'],
  ['drawing-unreadable', '<g>'],
  ['drawing-unreadable', '<path d="M0 0" d="M1 1"/>'],
  ['drawing-unreadable', '<path d=M0/>'],
  ['drawing-unreadable', '<text>&unknown;</text>'],
  ['drawing-unreadable', '<y:path d="M0 0"/>'],
])('%s', (code, shapes) => {
  test(shapes, () => expect(codes(`${head}${shapes}</svg>`)).toEqual([code]));
});

test('an entity bomb is refused before it grows', () => {
  const lol = Array.from({ length: 9 }, (_, i) => `<!ENTITY l${i + 1} "${`&l${i};`.repeat(10)}">`).join('');
  const bomb = `<?xml version="1.0"?><!DOCTYPE svg [<!ENTITY l0 "lol">${lol}]>${head}<text>&l9;</text></svg>`;
  expect(codes(bomb)).toEqual(['drawing-unsafe']);
});

test('an entity that reads a file is refused', () => {
  expect(
    codes(`<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/hostname">]>${head}<text>&x;</text></svg>`),
  ).toEqual(['drawing-unsafe']);
});

test('a plain DOCTYPE is harmless and dropped', () => {
  const doctype =
    '<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">';
  expect(codes(`${doctype}${head}<path d="M0 0"/></svg>`)).toEqual([]);
});

test('a style sheet asked for by an instruction', () => {
  expect(codes(`<?xml-stylesheet href="https://example.org/a.css"?>${head}</svg>`)).toEqual([
    'drawing-reaches-outside',
  ]);
});

test('use upon use, ten thousand million shapes in a few lines', () => {
  const layers = Array.from(
    { length: 10 },
    (_, i) => `<g id="g${i + 1}">${`<use href="#g${i}"/>`.repeat(10)}</g>`,
  ).join('');
  expect(codes(`${head}<path id="g0" d="M0 0"/>${layers}</svg>`)).toEqual(['drawing-too-complex']);
});

test('a chain of use ten thousand links long', () => {
  const chain = Array.from({ length: 10_000 }, (_, i) => `<use id="u${i}" href="#u${i + 1}"/>`).join('');
  expect(codes(`${head}${chain}<path id="u10000" d="M0 0"/></svg>`)).toEqual(['drawing-too-complex']);
});

test('any damage to a sound drawing is a problem or a drawing, never an exception', () => {
  const sound = `${head}<defs><linearGradient id="g"><stop offset="0"/></linearGradient></defs><g style="fill:url(#g)"><path id="p" d="M0 0L9 9"/><use href="#p"/></g><text x="1">a &amp; b</text></svg>`;
  const edit = fc.tuple(
    fc.nat(sound.length),
    fc.nat(6),
    fc.constantFrom('', '<', '>', '"', '&', '/', '\0', '<!--', ']]>', '<![CDATA[', '\ud800', 'é'),
  );
  fc.assert(
    fc.property(fc.array(edit, { minLength: 1, maxLength: 5 }), (edits) => {
      const text = edits.reduce(
        (now, [at, length, put]) => now.slice(0, at) + put + now.slice(at + length),
        sound,
      );
      const outcome = cleanSvg(text, { file: 'd.svg', prefix: '' });
      if (!outcome.ok) expect(outcome.problems.length).toBeGreaterThan(0);
    }),
    runs(300, 1500),
  );
});

test('use of itself, groups without end, shapes without number', () => {
  expect(codes(`${head}<g id="a"><use href="#b"/></g><g id="b"><use href="#a"/></g></svg>`)).toEqual([
    'drawing-too-complex',
  ]);
  expect(codes(`${head}${'<g>'.repeat(100_000)}${'</g>'.repeat(100_000)}</svg>`)).toEqual([
    'drawing-too-complex',
  ]);
  expect(codes(`${head}${'<g/>'.repeat(30_000)}</svg>`)).toEqual(['drawing-too-complex']);
  expect(codes(`${head}${' '.repeat(5_000_000)}</svg>`)).toEqual(['drawing-too-complex']);
});

test('each fault names its file and line', async () => {
  const text = `${head}\n<script/>\n<path\n onclick="x" d="M0 0"/>\n</svg>`;
  expect(await inspectPicture(Buffer.from(text), 'lamp/d.svg')).toEqual({
    ok: false,
    problems: [
      {
        code: 'drawing-unsafe',
        message: "lamp/d.svg, line 2: script can run code in the reader's browser; remove it",
      },
      { code: 'drawing-unsafe', message: 'lamp/d.svg, line 4: onclick runs code; remove it' },
    ],
  });
});

test('a drawing that is not UTF-8, and one that is compressed', async () => {
  const utf16 = Buffer.from(`${head}<text>é</text></svg>`, 'latin1');
  expect(await inspectPicture(utf16, 'd.svg')).toMatchObject({ problems: [{ code: 'drawing-unreadable' }] });
  expect(await inspectPicture(Buffer.from([0x1f, 0x8b, 8, 0]), 'd.svg')).toMatchObject({
    problems: [{ code: 'picture-unreadable', message: 'd.svg is compressed; save the drawing as plain SVG' }],
  });
});

test('whatever is thrown at it, what comes out holds nothing but the allow-list', () => {
  const names = [
    'g',
    'path',
    'use',
    'text',
    'script',
    'style',
    'image',
    'a',
    'foreignObject',
    'svg',
    'set',
    'title',
  ];
  const values = [
    '#p',
    'url(#p)',
    'javascript:alert(1)',
    'https://example.org/',
    'url(https://example.org)',
    '1',
    '"><script>',
    '\\75rl(x)',
  ];
  const attributes = [
    'href',
    'xlink:href',
    'onload',
    'fill',
    'style',
    'd',
    'id',
    'class',
    'clip-path',
    'xml:base',
  ];
  const escaped = (value: string) =>
    value.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/"/g, '&quot;');
  const attribute = fc.tuple(fc.constantFrom(...attributes), fc.constantFrom(...values));
  const element = fc
    .tuple(fc.constantFrom(...names), fc.uniqueArray(attribute, { selector: ([name]) => name, maxLength: 4 }))
    .map(
      ([name, list]) =>
        `<${name}${list.map(([key, value]) => ` ${key}="${escaped(value)}"`).join('')}>x</${name}>`,
    );
  let passed = 0;
  fc.assert(
    fc.property(fc.array(element, { maxLength: 3 }), (elements) => {
      const outcome = cleanSvg(`${head}<path id="p" d="M0 0"/>${elements.join('')}</svg>`, {
        file: 'd',
        prefix: 'p-',
      });
      if (!outcome.ok) return;
      passed += 1;
      const html = unified()
        .use(rehypeStringify)
        .stringify({ type: 'root', children: [outcome.value.element] });
      expect(html).not.toMatch(
        /<(script|style|image|a|foreignObject|set)\b|\son\w+=|https?:|javascript:|class=|style=|href="#(?!p-)|url\(#(?!p-)/i,
      );
    }),
    runs(400, 2000),
  );
  expect(passed).toBeGreaterThan(100);
});
