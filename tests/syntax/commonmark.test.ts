import { tests as examples } from 'commonmark-spec';
import { describe, expect, it } from 'vitest';
import { documentHtml } from './document-html.ts';
import { read } from './reading.ts';

/**
 * The examples of the CommonMark specification, 0.31.2, as npm `commonmark-spec` has them, read as the body of
 * a guide: empty front matter stands before each, so that an example which begins with `---` is not taken
 * for front matter, just as it would not be in a guide.
 */
const frontMatter = '---\n---\n';

/** The specification prints a tab as an arrow. */
const tabs = (text: string) => text.replaceAll('→', '\t');

/** How our writer and the specification write the same HTML: void elements and character references. */
const ourWriting = (html: string) =>
  html
    .replace(/&#x3C;/g, '&lt;')
    .replace(/&#x26;/g, '&amp;')
    .replace(/&#x22;/g, '"')
    .replace(/<(br|hr|img[^>]*)>/g, '<$1 />');
const theirWriting = (html: string) =>
  tabs(html)
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"');

/** Every example that differs, by number: raw HTML is dropped, with a finding, and comments in silence. */
const rawHtml = [
  21, 31, 148, 149, 150, 151, 152, 153, 154, 155, 156, 157, 158, 159, 160, 161, 162, 163, 164, 165, 166, 167,
  168, 169, 170, 171, 172, 173, 174, 175, 176, 177, 178, 180, 181, 182, 184, 185, 186, 187, 188, 189, 190,
  191, 201, 344, 475, 476, 477, 491, 494, 524, 536, 613, 614, 615, 616, 617, 623, 626, 627, 628, 629, 630,
  631, 642, 643,
];
const comments = [179, 183, 308, 309, 625];
/** A bare `:name` is text and a colon after a letter is too: no example is read as a directive. */
const directives: number[] = [];

const read652 = examples.map((example) => {
  const { document, findings } = read(frontMatter + tabs(example.markdown));
  const same = ourWriting(documentHtml(document)) === theirWriting(example.html);
  return { ...example, same, codes: findings.map(({ code }) => code) };
});
const differing = read652.filter(({ same }) => !same);

describe('CommonMark through our pipeline', () => {
  it('gives the standard HTML for 580 of the 652 examples', () => {
    expect(examples).toHaveLength(652);
    expect(read652.filter(({ same }) => same)).toHaveLength(580);
  });

  it('differs only where raw HTML stands, which is dropped', () => {
    const numbers = [...rawHtml, ...comments, ...directives].sort((a, b) => a - b);
    expect(differing.map(({ number }) => number)).toEqual(numbers);
  });

  it('reports the HTML of each that differs, unless it is a comment', () => {
    const silent = differing.filter(({ codes }) => !codes.includes('html-dropped'));
    expect(silent.map(({ number }) => number)).toEqual(comments);
    for (const { markdown } of silent) expect(markdown).toContain('<!--');
  });
});
