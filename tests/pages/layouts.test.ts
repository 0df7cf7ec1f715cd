import { Liquid } from 'liquidjs';
import { describe, expect, it } from 'vitest';
import { markup } from '../../src/html/markup.ts';
import { prepareLayouts } from '../../src/pages/layouts/layouts.ts';

/** Renders one layout of a shop's own. */
function render(text: string, view: object = {}, workLimit?: number) {
  return prepareLayouts(new Map([['own.liquid', text]]), workLimit)('own.liquid', view);
}

describe('layouts', () => {
  it('escapes whatever they put out', () => {
    const title = `<script>alert(1)</script> "it's" & more`;
    const html = '&lt;script&gt;alert(1)&lt;/script&gt; &#34;it&#39;s&#34; &amp; more';
    expect(render('{{ title }}', { title })).toEqual({ ok: true, html });
    expect(render('{% echo title %}', { title })).toEqual({ ok: true, html });
    expect(render('{% cycle title %}', { title })).toEqual({ ok: true, html });
  });

  it('put out as HTML only what Baybook made as HTML', () => {
    expect(render('{{ body | markup }}', { body: markup('<p>Ease it forward.</p>') })).toEqual({
      ok: true,
      html: '<p>Ease it forward.</p>',
    });
    for (const forged of ['<b>bold</b>', { html: '<b>bold</b>' }, null]) {
      const rendered = render('{{ body | markup }}', { body: forged });
      expect(rendered.ok).toBe(false);
    }
  });

  it('refuse raw, and say where it stands', () => {
    expect(render('<p>\n{{ title | raw }}</p>', { title: 'x' })).toEqual({
      ok: false,
      problem: expect.stringMatching(/"raw" is refused.*own\.liquid, line:2, col:1/),
    });
  });

  it('tell an unknown name, with its place, instead of leaving a hole', () => {
    expect(render('{{ titel }}', { title: 'x' })).toEqual({
      ok: false,
      problem: expect.stringMatching(/undefined variable: titel.*line:1, col:4/),
    });
    expect(render('{{ title | shout }}', { title: 'x' })).toMatchObject({ ok: false });
  });

  it('stop a layout that would not end or would fill the memory', () => {
    expect(render('{% for i in (1..100000000) %}{{ i }}{% endfor %}')).toMatchObject({
      ok: false,
      problem: expect.stringContaining('memory'),
    });
  });

  it('count the work of loops within loops, and of layouts within themselves, and say where it was', () => {
    const loops = Array.from({ length: 4 }, (_, i) => `{% for i${i} in list %}`).join('');
    const ends = '{% endfor %}'.repeat(4);
    const list = Array.from({ length: 100 }, (_, index) => index);
    expect(render(`<p>\n${loops}{{ i3 }}${ends}`, { list }, 10_000)).toEqual({
      ok: false,
      problem: expect.stringMatching(/still at work.*own\.liquid, line:2, col:\d+/),
    });
    expect(render("<p>\n{% render 'own.liquid' %}")).toEqual({
      ok: false,
      problem: expect.stringMatching(/within each other without an end.*own\.liquid, line:2, col:1/),
    });
  });

  it('put out, compiled, what Liquid puts out of a layout of any kind', () => {
    const view: object = {
      title: 'Cut & fit',
      none: null,
      count: 3,
      rows: [
        { name: 'a', parts: [1, 2] },
        { name: 'b', parts: [] },
        { name: 'c', parts: [3] },
      ],
    };
    const layouts = new Map([
      ['inner.liquid', '({{ row.name }}{% assign x = 1 %}{{ x }})\n  {%- comment %}no{% endcomment %}'],
      [
        'own.liquid',
        [
          '{% assign x = count | plus: 2 %}{{ x }}{{ title | downcase | capitalize }}',
          '{% capture y %}<{{ title }}>{% endcapture %}{{ y }}{{ y | size }}',
          '{% for row in rows %}{{ forloop.index }}/{{ forloop.length }}{{ forloop.rindex0 }}{{ forloop.first }}',
          '  {%- render "inner.liquid", row: row -%}',
          '  {% for part in row.parts %}{{ part }}{% unless forloop.last %}, {% endunless %}{% else %}-{% endfor %}',
          '{% if row.name == "b" %}{% continue %}{% endif %}{{ row.name | append: title }}{% endfor %}',
          '{% for row in rows reversed limit:2 %}{{ row.name }}{% if row.name != "c" %}{% break %}{% endif %}{% endfor %}',
          '{% for row in rows offset:1 %}{{ row.name }}{% endfor %}{% for pair in rows[0] %}{{ pair[0] }}{% endfor %}',
          '{% render "inner.liquid" for rows as row %}{% render "inner.liquid" with rows[1] as row %}',
          '{% case count %}{% when 1, 3 %}three{% when 3 %}again{% else %}other{% endcase %}',
          '{% case title %}{% when "x" or "y" %}x{% else %}other{% endcase %}',
          '{% unless none %}none{% elsif count > 2 %}more{% else %}less{% endunless %}',
          '{% if count > 2 and rows[1].parts.size == 0 or none %}yes{% elsif not none %}no{% endif %}',
          '{% cycle "a", "b" %}{% cycle "a", "b" %}{% increment n %}{% decrement n %}{% echo title %}',
          '{% tablerow row in rows cols:2 %}{{ row.name }}{{ tablerowloop.col }}{% endtablerow %}',
          '{{ rows.size }}{{ rows.first.name }}{{ rows | map: "name" | join: "+" }}{{ none | default: title }}',
          '{% if title contains "&" %}{{ (1..3) | join }}{% endif %}{% raw %}{{ x }}{% endraw %}',
        ].join('\n'),
      ],
    ]);
    const interpreted = new Liquid({
      templates: Object.fromEntries(layouts),
      outputEscape: 'escape',
      strictVariables: true,
      ownPropertyOnly: true,
      jsTruthy: true,
    });
    const html = interpreted.renderFileSync('own.liquid', view);
    expect(html).toContain('Cut &amp; fit');
    expect(prepareLayouts(layouts)('own.liquid', view)).toEqual({ ok: true, html });
  });

  it('cannot reach what a view does not hold itself', () => {
    expect(render('{{ title.constructor.name }}', { title: 'x' })).toMatchObject({ ok: false });
  });

  it('read no file but the layouts that they were given', () => {
    expect(render("{% render '../../package.json' %}")).toMatchObject({ ok: false });
  });
});
