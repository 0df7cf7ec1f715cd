import { outside } from './outside.ts';

const startTag = /<[a-z][^<>]*>/;

/** End tags that what follows implies; the blanks at which such a one stands go with it: they part blocks, not words. */
const impliedEnds: readonly RegExp[] = [
  /<\/(?:td|th)>\s*(?=<(?:td|th)\b|<\/tr>)/,
  /<\/tr>\s*(?=<tr\b|<\/(?:tbody|thead|table)>)/,
  /<\/(?:tbody|thead)>\s*(?=<tbody\b)|<\/tbody>\s*(?=<\/table>)/,
  /<\/(?:dt|dd)>\s*(?=<(?:dt|dd)\b|<\/(?:dl|div)>)/,
  /<\/li>\s*(?=<li\b|<\/(?:ul|ol)>)/,
  /<\/p>\s*(?=<(?:p|ul|ol|dl|div|table|section|article|h[1-6]|header|footer|fieldset|details|nav)\b|<\/(?:div|section|article|header|footer|li|td|dd|fieldset|details|dialog|main)>)/,
];

/**
 * A page without the marks that HTML lets one leave out: quotes around plain values, and end tags that what follows
 * implies (HTML Living Standard, 13.1.2.3 and 13.1.2.4). A browser reads the same page.
 */
export const compactPage = outside(
  // Elements in which a blank counts, or whose text is no markup.
  ['script', 'style', 'pre', 'textarea'],
  new RegExp([startTag, ...impliedEnds].map(({ source }) => source).join('|'), 'gi'),
  (found) => (found[1] === '/' ? '' : unquoted(found)),
);

function unquoted(tag: string): string {
  if (!tag.includes('="')) return tag;
  return tag.replace(/="([^"\s'=<>`]*)"(?=[\s>])/g, (_, value: string) => (value === '' ? '' : `=${value}`));
}
