import { describe, expect, it } from 'vitest';
import { unbroken } from '../../src/html/unbroken.ts';

/** Shown for the two characters that are not seen: a no-break space (GL) and a word joiner (WJ), both of UAX 14. */
const seen = (html: string) => unbroken(html).replaceAll('\u00a0', '_').replaceAll('\u2060', '|');

describe('numbers at the end of a line', () => {
  it.each([
    ['<p>10 mm socket, 1/4 in bit</p>', '<p>10_mm socket, 1/4_in bit</p>'],
    ['<p>1 1/4 in, 20 °C, 5 %, 25 Nm, 25 N·m</p>', '<p>1_1/4_in, 20_°C, 5_%, 25_Nm, 25_N·m</p>'],
    ['<p>4–10 min, 10–60 N·m</p>', '<p>4–|10_min, 10–|60_N·m</p>'],
    [
      '<p>turn 2 screws, in step 4 then 5 more, A–B – 3</p>',
      '<p>turn 2 screws, in step 4 then 5 more, A–B – 3</p>',
    ],
    ['<p>8 min, 2 people</p>', '<p>8_min, 2_people</p>'],
    ['<p>3 mmm, 3 ing</p>', '<p>3 mmm, 3 ing</p>'],
  ])('%s', (html, expected) => {
    expect(seen(html)).toBe(expected);
  });

  it.each([
    '<img alt="A 10 mm socket, 4–10 min">',
    '<script>a("10 mm", "4–10 min")</script>',
    '<style>.a::before { content: "10 mm 4–10" }</style>',
    '<code>expect="10 mm"</code>',
    '<option>10 mm</option>',
  ])('leaves %s', (html) => {
    expect(unbroken(`<p>a</p>${html}<p>b</p>`)).toBe(`<p>a</p>${html}<p>b</p>`);
  });

  it('changes nothing that it has changed', () => {
    const html = unbroken('<p>Tighten to 10–60 N·m with the 10 mm socket</p>');
    expect(unbroken(html)).toBe(html);
  });
});
