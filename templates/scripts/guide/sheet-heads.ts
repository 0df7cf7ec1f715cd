/**
 * Says something at a corner of the head of each printed sheet; where there is nothing to say, the line to write on
 * stands there that the page's own style has.
 *
 * @param sheet holds this corner alone
 */
export function sayAtHead(sheet: CSSStyleSheet, corner: 'left' | 'right', words: string): void {
  const text = words.replace(/[^A-Za-z0-9 ,]/gu, (sign) => `\\${sign.codePointAt(0)?.toString(16)} `);
  sheet.replaceSync(words === '' ? '' : `@page { @top-${corner} { content: "${text}" } }`);
  if (!document.adoptedStyleSheets.includes(sheet)) document.adoptedStyleSheets.push(sheet);
}
