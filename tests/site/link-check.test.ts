import { describe, expect, it } from 'vitest';
import { deadLinks, pageLinks } from '../../src/site/guides/link-check.ts';

const files = new Set(['index.html', 'guides/a/index.html', 'assets/page.css', 'pictures/x 1.webp']);

function dead(html: string, page = 'guides/a/index.html'): string[] {
  const pages = [pageLinks('index.html', '<h2 id="top">x</h2>'), pageLinks(page, html)];
  return deadLinks(pages, files).map(({ href }) => href);
}

describe('links of the built site', () => {
  it('are sound where file and place are there', () => {
    const html = `<p id="here"><a href="#here">x</a> <a href='../../index.html#top'>x</a><link href="../../assets/page.css">
      <img src="../../pictures/x%201.webp" srcset="../../pictures/x%201.webp 480w, ../../pictures/x%201.webp 800w"></p>`;
    expect(dead(html)).toEqual([]);
  });

  it('are dead where a file, a place or a picture size is missing', () => {
    expect(dead('<a href="../b/index.html">x</a>')).toEqual(['../b/index.html']);
    expect(dead('<a href="#gone">x</a>')).toEqual(['#gone']);
    expect(dead('<a href="../../index.html#gone">x</a>')).toEqual(['../../index.html#gone']);
    expect(dead('<source srcset="../../pictures/y.webp 480w">')).toEqual(['../../pictures/y.webp']);
  });

  it('are dead where they name a folder: from a stick that is a list of files', () => {
    expect(dead('<a href="../../guides/a/">x</a>')).toEqual(['../../guides/a/']);
  });

  it('to other hosts are none of the site’s', () => {
    expect(
      dead('<a href="https://example.org/a?b=1&amp;c=2">x</a><a href="mailto:a@example.org">x</a>'),
    ).toEqual([]);
  });
});
