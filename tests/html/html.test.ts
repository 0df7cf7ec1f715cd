import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { escapeText, isMarkup, markup } from '../../src/html/markup.ts';
import { plainText, proseToHtml } from '../../src/html/prose.ts';
import { stringify } from '../../src/html/stringify.ts';
import type { ProseNode } from '../../src/model/prose.ts';

interface Noun {
  readonly type: 'noun';
  readonly word: string;
}

const text = (value: string) => ({ type: 'text', value, at: null }) as const;
const prose: readonly ProseNode<Noun>[] = [
  {
    type: 'element',
    tagName: 'p',
    properties: { className: ['lead', 'wide'] },
    at: null,
    children: [
      text('Work the '),
      { type: 'noun', word: 'trim lever' },
      text(' behind <the> edge & lift '),
      {
        type: 'element',
        tagName: 'img',
        properties: { src: 'a.svg', alt: 'the "edge"' },
        children: [],
        at: null,
      },
    ],
  },
];

describe('prose as HTML', () => {
  it('renders its own nodes by the caller and escapes everything else', () => {
    const nodes = proseToHtml<Noun>(prose, ({ word }) => [h('strong', word)]);
    expect(stringify(nodes).html).toBe(
      '<p class="lead wide">Work the <strong>trim lever</strong> behind &#x3C;the> edge &#x26; lift <img src="a.svg" alt="the &#x22;edge&#x22;"></p>',
    );
  });

  it('leaves the prose as it was', () => {
    const before = JSON.stringify(prose);
    const [paragraph] = proseToHtml<Noun>(prose, () => []);
    if (paragraph?.type === 'element') (paragraph.properties.className as string[]).push('changed');
    expect(JSON.stringify(prose)).toBe(before);
  });

  it('writes no HTML that stands in a text', () => {
    expect(stringify([{ type: 'text', value: '<script>x</script>' }]).html).toBe(
      '&#x3C;script>x&#x3C;/script>',
    );
  });
});

describe('plain text', () => {
  it('has the words of the caller, and a picture by its alternative text', () => {
    expect(plainText<Noun>(prose, ({ word }) => word)).toBe(
      'Work the trim lever behind <the> edge & lift the "edge"',
    );
  });
});

describe('markup', () => {
  it('cannot be forged by data', () => {
    expect(isMarkup(markup('<b>x</b>'))).toBe(true);
    for (const forged of [
      { html: '<b>x</b>' },
      { brand: true, html: 'x' },
      JSON.parse('{"html":"x"}'),
      'x',
      null,
    ]) {
      expect(isMarkup(forged)).toBe(false);
    }
  });

  it('escapes a text for content and attributes', () => {
    expect(escapeText(`<a href="x" title='&'>`)).toBe('&#60;a href=&#34;x&#34; title=&#39;&#38;&#39;&#62;');
  });
});
