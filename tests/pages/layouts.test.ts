import { describe, expect, it } from 'vitest';
import { markup } from '../../src/html/markup.ts';
import { prepareLayouts } from '../../src/pages/frame/layouts.ts';

/** Renders one layout of a shop's own. */
function render(text: string, view: object = {}) {
  return prepareLayouts(new Map([['own.liquid', text]]))('own.liquid', view);
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

  it('cannot reach what a view does not hold itself', () => {
    expect(render('{{ title.constructor.name }}', { title: 'x' })).toMatchObject({ ok: false });
  });

  it('read no file but the layouts that they were given', () => {
    expect(render("{% render '../../package.json' %}")).toMatchObject({ ok: false });
  });
});
