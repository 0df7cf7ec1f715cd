import { type DefaultTreeAdapterTypes, parse } from 'parse5';
import { describe, expect, it } from 'vitest';
import { compactPage } from '../../src/html/compact-page.ts';
import { guideView } from '../pages/every-field.ts';
import { guideHtml, renderView } from '../pages/render.ts';

/** A page as parse5 reads it by the rules of the HTML standard, without the blanks that part blocks. */
function tree(node: DefaultTreeAdapterTypes.Node): unknown {
  if (node.nodeName === '#text') return (node as DefaultTreeAdapterTypes.TextNode).value.trim();
  const attributes = 'attrs' in node ? node.attrs.map(({ name, value }) => `${name}=${value}`) : [];
  const children = 'childNodes' in node ? node.childNodes.map(tree).filter((child) => child !== '') : [];
  return [node.nodeName, attributes, children];
}

describe('a page in few bytes', () => {
  it.each([
    ['a guide', guideHtml()],
    ['every field of a guide', renderView('guide.liquid', guideView())],
    [
      'what an author may write',
      '<!doctype html><p>a</p><p>b <a href="#x">c</a></p> text <pre><p>"</p>  <p>x</p></pre><ul>\n<li>one</li>\n<li><p>two</p></li>\n</ul><a href="y"><p>in a link</p></a><svg><path d="M0 0" fill="none"/><use href="#x"/></svg><p title="a &gt; b">c</p><p class="">d</p><table><tr><td>1</td><td>2</td></tr></table>',
    ],
  ])('is read as before: %s', (_, html) => {
    const compact = compactPage(html);
    expect(compact.length).toBeLessThan(html.length);
    expect(tree(parse(compact))).toEqual(tree(parse(html)));
  });

  it('leaves out quotes and end tags where the standard lets it, and nowhere else', () => {
    expect(compactPage('<p class="a">x</p>\n<p class="a b">y</p>z<svg><use href="#i"/></svg>')).toBe(
      '<p class=a>x<p class="a b">y</p>z<svg><use href="#i"/></svg>',
    );
    expect(compactPage('<pre class="a"><p class="b">x</p><p>y</p></pre>')).toBe(
      '<pre class="a"><p class="b">x</p><p>y</p></pre>',
    );
  });
});
