import { describe, expect, it } from 'vitest';
import { styleRequests } from '../../src/html/style-requests.ts';
import { guidePage } from '../../src/pages/guide/guide-page.ts';
import { prepareLayouts } from '../../src/pages/layouts/layouts.ts';
import { prepareOwnLayouts } from '../../src/pages/layouts/own-layouts.ts';
import { indexPage } from '../../src/pages/reference/index-page.ts';
import { readTemplates } from '../../src/site/templates.ts';
import * as fixture from './fixture.ts';
import { page } from './render.ts';

const { layouts } = await readTemplates({ paths: [], read: () => null });
const view = indexPage([], [], page(''));

/** The first page with a layout of the shop's own in the place of a built-in one. */
function renderWith(name: string, text: string) {
  return prepareOwnLayouts(new Map([...layouts, [name, text]]))('index.liquid', view);
}

/** The built-in frame with a line of the shop's own before another. */
function frameWith(line: string, before: string) {
  const frame = layouts.get('page.liquid') ?? '';
  const text = frame.replace(before, `${line}\n${before}`);
  return { text, line: text.slice(0, text.indexOf(line)).split('\n').length };
}

/** What a page may not hold, as it would stand in the body of a shop's own frame. */
const inBody = [
  '<script src="https://metrics.example/a.js"></script>',
  '<script src="//metrics.example/a.js"></script>',
  '<script>fetch("/x")</script>',
  '<script type="module">1</script>',
  '<SCRIPT SRC="assets/other.js"></SCRIPT>',
  '<script src="assets/offline.js">alert(1)</script>',
  '<script type="application/json" src="https://metrics.example/a.js"></script>',
  '<svg><script>alert(1)</script></svg>',
  '<svg><script href="https://metrics.example/a.js"/></svg>',
  '<img src="https://pictures.example/a.png" alt="">',
  '<img src="//pictures.example/a.png" alt="">',
  '<img src="\\\\pictures.example/a.png" alt="">',
  '<img src=" h&#9;ttps://pictures.example/a.png" alt="">',
  '<img src="a.png" srcset="a.png 1x, https://pictures.example/b.png 2x" alt="">',
  '<img src=x onerror=alert(1)>',
  '<img/src="x"/onerror=alert(1)>',
  '<div onpointerenter=go()></div>',
  '<p onclick="go()">Go</p>',
  '<p OnMouseOver=go()>Go</p>',
  '<svg onload=alert(1)></svg>',
  '<details ontoggle=alert(1) open></details>',
  '<a href="javascript:alert(1)">Go</a>',
  '<a href=" java&#10;script:alert(1)">Go</a>',
  '<a href="data:text/html,x">Go</a>',
  '<a href="vbscript:x">Go</a>',
  '<a href="index.html" ping="https://metrics.example/">Go</a>',
  '<svg><a xlink:href="javascript:alert(1)"><text>Go</text></a></svg>',
  '<svg><use href="https://pictures.example/a.svg#x"/></svg>',
  '<svg><image xlink:href="https://pictures.example/a.png"/></svg>',
  '<svg><a><animate attributeName="href" values="javascript:alert(1)"/></a></svg>',
  '<svg><style>@import "https://styles.example/a.css"</style></svg>',
  '<math href="javascript:alert(1)">x</math>',
  '<iframe src="index.html"></iframe>',
  '<iframe srcdoc="<p>x</p>"></iframe>',
  '<object data="index.html"></object>',
  '<embed src="index.html">',
  '<video poster="https://pictures.example/a.png"></video>',
  '<audio src="https://sounds.example/a.ogg"></audio>',
  '<video><track src="https://sounds.example/a.vtt"></video>',
  '<form action="https://metrics.example/"><button>Go</button></form>',
  '<form><button formaction="https://metrics.example/">Go</button></form>',
  '<input type="image" src="https://pictures.example/a.png" alt="x">',
  '<table background="https://pictures.example/a.png"><tr><td>x</td></tr></table>',
  '<p style="background: url(https://pictures.example/a.png)">x</p>',
  '<p style="background: u\\72l(//pictures.example/a.png)">x</p>',
  '<style>body { color: red }</style>',
  '<noscript><img src="https://metrics.example/a.gif" alt=""></noscript>',
  '<template><img src="https://metrics.example/a.gif" alt=""></template>',
  '<svg><rect fill="url(https://pictures.example/a.svg#x)"/></svg>',
  '<svg><g filter="url(//pictures.example/a.svg#x)"><text>x</text></g></svg>',
  '<svg><path clip-path="u\\72l(https://pictures.example/a.svg#x)"/></svg>',
  '<svg><rect><set attributeName="mask" to="url(https://pictures.example/a.svg#x)"/></rect></svg>',
  '<svg><rect><animate attributeName="fill" values="red;url(https://pictures.example/a.svg#x)"/></rect></svg>',
  '<img src="a.png" srcset="https://site.invalid,@pictures.example/b.png 2x" alt="">',
  '<img src="https:pictures.example/a.png" alt="">',
  '<img src="http:pictures.example/a.png" alt="">',
  '<picture><source srcset="a.png 1x,https://pictures.example/b.png 2x"><img src="a.png" alt=""></picture>',
];

/** What a page may not hold in its head. */
const inHead = [
  '<base href="https://elsewhere.example/">',
  '<meta http-equiv="refresh" content="0; url=https://elsewhere.example/">',
  '<link rel="stylesheet" href="https://styles.example/a.css">',
  '<link rel="stylesheet" href="assets/other.css">',
  '<link rel="preconnect" href="https://styles.example/">',
  '<link rel="prefetch" href="assets/other.html">',
  '<link rel="icon" href="https://pictures.example/a.png">',
];

describe('layouts of a shop’s own', () => {
  it.each(inBody)('may not put %s in a page', (line) => {
    const own = frameWith(line, '<footer class="colophon">');
    expect(renderWith('page.liquid', own.text)).toEqual({
      ok: false,
      problem: expect.stringMatching(new RegExp(`file:page\\.liquid, line:${own.line}, col:\\d+`)),
    });
  });

  it.each(inHead)('may not put %s in the head of a page', (line) => {
    const own = frameWith(line, '<title>');
    expect(renderWith('page.liquid', own.text)).toEqual({
      ok: false,
      problem: expect.stringMatching(new RegExp(`file:page\\.liquid, line:${own.line}, col:\\d+`)),
    });
  });

  it('may not lose the policy, weaken it, or put it behind what is loaded', () => {
    const frame = layouts.get('page.liquid') ?? '';
    const policy = '<meta http-equiv="Content-Security-Policy" content="{{ frame.policy | markup }}">';
    expect(frame).toContain(policy);
    for (const text of [
      frame.replace(policy, ''),
      frame.replace(policy, `<!-- ${policy} -->`),
      frame.replace('{{ frame.policy | markup }}', "default-src *; script-src 'unsafe-inline'"),
      frame.replace(policy, '').replace('</head>', `${policy}\n</head>`),
      frame.replace(policy, '').replace('<main', `${policy}<main`),
    ]) {
      expect(renderWith('page.liquid', text)).toEqual({
        ok: false,
        problem: expect.stringMatching(/lost its content security policy.*file:page\.liquid, line:3, col:1/),
      });
    }
  });

  it('are told of in the layout that wrote it, within loops and layouts within layouts', () => {
    const own =
      '<ul>\n{% for one in list %}\n  <li>{{ one }}</li>\n<li onclick="x">{{ one }}</li>{% endfor %}</ul>';
    const frame = (layouts.get('page.liquid') ?? '').replace(
      '<footer class="colophon">',
      "{% assign list = 'a,b' | split: ',' %}{% render 'own.liquid', list: list %}\n<footer class=\"colophon\">",
    );
    const all = new Map([...layouts, ['page.liquid', frame], ['own.liquid', own]]);
    expect(prepareOwnLayouts(all)('index.liquid', view)).toEqual({
      ok: false,
      problem: expect.stringMatching(
        /<li onclick="x"> runs a handler, file:own\.liquid, line:4, col:5, and 1 more/,
      ),
    });
  });

  it('may change everything else', () => {
    const own = frameWith(
      '<p class="own"><a href="https://shop.example/">Our shop</a> <a href="mailto:bay@shop.example">write</a> <img src="icons/icon.svg" srcset="icons/icon.svg 1x, data:image/png;base64,AA== 2x" alt=""><svg fill="url(#own)"></svg></p>',
      '<footer class="colophon">',
    );
    expect(renderWith('page.liquid', own.text)).toMatchObject({
      ok: true,
      html: expect.stringContaining('Our shop'),
    });
  });

  it('are held to what the built-in pages hold themselves to', () => {
    const guide = guidePage(fixture.guide, fixture.job, page());
    expect(prepareOwnLayouts(layouts)('guide.liquid', guide)).toEqual(
      prepareLayouts(layouts)('guide.liquid', guide),
    );
    expect(prepareOwnLayouts(layouts)('index.liquid', view)).toMatchObject({ ok: true });
  });

  it('have neither a clock nor chance', () => {
    for (const filter of ["'now' | date: '%Y'", "'today' | date_to_string", "'a,b' | split: ',' | sample"]) {
      expect(renderWith('index.liquid', `<p>\n{{ ${filter} }}</p>`)).toEqual({
        ok: false,
        problem: expect.stringMatching(/is refused.*index\.liquid, line:2/),
      });
    }
  });
});

describe('style sheets of a shop’s own', () => {
  it.each([
    '@import "https://styles.example/a.css";',
    '@import url(//styles.example/a.css);',
    'p { background: url( "https://pictures.example/a.png" ) }',
    'p { background: u\\72 l(https://pictures.example/a.png) }',
    'p { background: url(/* */https://pictures.example/a.png) }',
    "p { background: image-set('https://pictures.example/a.png' 1x) }",
    '@font-face { font-family: x; src: url(https://fonts.example/a.woff2) }',
    // Each of these hides its address from whoever looks for words and not for tokens.
    "p { background: image-set('a.png' 1x, 'https://pictures.example/a.png' 2x) }",
    'p { background: url("ht\\9 tps://pictures.example/a.png") }',
    'p { background: url("\\1 https://pictures.example/a.png") }',
    'p { background: url("/\\9 /pictures.example/a.png") }',
    'p { background: url("\\\\\\\\pictures.example/a.png") }',
    'a { background: url("/*") } b { background: url(https://pictures.example/a.png) } c { background: url("*/") }',
    'a { background: url(/*) } b { background: url(https://pictures.example/a.png) } c { background: url(*/) }',
    'a::before { content: "\\"" url(https://pictures.example/a.png) }',
    'a::before { content: image-set("https://pictures.example/a.png" 1x) }',
    'p { --own: "https://pictures.example/a.png"; background: image-set(var(--own) 1x) }',
    'p { background: url(https:pictures.example/a.png) }',
    'p { background: src("https://pictures.example/a.png") }',
    '@IMPORT /**/ "\\68ttps://styles.example/a.css";',
  ])('may not ask another host: %s', (rule) => {
    expect(styleRequests(`body {\n color: teal }\n${rule}`)).toMatchObject([{ line: 3 }]);
  });

  it('is told of an address that a line carries on', () => {
    expect(styleRequests('p {\n background: url("ht\\\ntps://pictures.example/a.png") }')).toMatchObject([
      { line: 2 },
    ]);
  });

  it('may print an address, and look for one', () => {
    for (const css of [
      'a::after { content: "https://shop.example/" attr(href) }',
      'a[href^="https://"] { color: teal }',
      'p { font: 1rem "Shop Sans", sans-serif; quotes: "«" "»"; grid-template-areas: "a b" "c d" }',
      '@font-face { src: local("Shop Sans"), url("own.woff2") format("woff2") }',
    ])
      expect(styleRequests(css), css).toEqual([]);
  });

  it('may use what stands in the site or in themselves', () => {
    expect(
      styleRequests(
        '/* https://shop.example */ p { background: url(data:image/png;base64,AA), url(icons/a.svg) }',
      ),
    ).toEqual([]);
  });
});
