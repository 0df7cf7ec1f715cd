import { outside } from './outside.ts';

/**
 * A page without the marks that HTML lets one leave out: quotes around plain values, and end tags that what follows
 * implies (HTML Living Standard, 13.1.2.3 and 13.1.2.4). Blanks at which such an end tag stood go with it: they part
 * blocks, not words. A browser reads the same page.
 */
export const compactPage = outside(
  // Elements in which a blank counts, or whose text is no markup.
  ['script', 'style', 'pre', 'textarea'],
  (part) => impliedEnds.reduce((text, end) => text.replace(end, ''), part.replace(tag, unquoted)),
);

const tag = /<[a-z][^<>]*>/gi;

const unquoted = (one: string) =>
  one.replace(/="([^"\s'=<>`]*)"(?=[\s>])/g, (_, value: string) => (value === '' ? '' : `=${value}`));

const impliedEnds: readonly RegExp[] = [
  /<\/(?:td|th)>\s*(?=<(?:td|th)\b|<\/tr>)/g,
  /<\/tr>\s*(?=<tr\b|<\/(?:tbody|thead|table)>)/g,
  /<\/(?:tbody|thead)>\s*(?=<tbody\b)|<\/tbody>\s*(?=<\/table>)/g,
  /<\/(?:dt|dd)>\s*(?=<(?:dt|dd)\b|<\/(?:dl|div)>)/g,
  /<\/li>\s*(?=<li\b|<\/(?:ul|ol)>)/g,
  /<\/p>\s*(?=<(?:p|ul|ol|dl|div|table|section|article|h[1-6]|header|footer|fieldset|details|nav)\b|<\/(?:div|section|article|header|footer|li|td|dd|fieldset|details|dialog|main)>)/g,
];
