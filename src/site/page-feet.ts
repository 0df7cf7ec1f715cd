/**
 * The style sheet that prints a guide's title, its identity and "page x of y" at the foot of each sheet. It is
 * a file of its own because the policy of the pages lets no style stand in them.
 */
export function pageFeet(title: string, identity: string): string {
  return [
    '@page {',
    `  @bottom-left { content: ${cssText(title)}; font: 8pt sans-serif; text-align: left; width: 40%; }`,
    `  @bottom-center { content: "Page " counter(page) " of " counter(pages); font: 8pt sans-serif; }`,
    `  @bottom-right { content: ${cssText(identity)}; font: 8pt sans-serif; text-align: right; width: 40%; }`,
    '}',
    '',
  ].join('\n');
}

/** Text as a CSS string; everything but plain letters, digits and spaces by its code point, so that nothing ends it. */
function cssText(text: string): string {
  const escaped = text.replace(/[^A-Za-z0-9 ]/gu, (sign) => `\\${(sign.codePointAt(0) ?? 0).toString(16)} `);
  return `"${escaped}"`;
}
