import { capitalised } from '../job/words/noun.ts';
import type { Guide } from '../model/guide.ts';

/**
 * The style sheet that prints a guide's title, its identity and "page x of y" at the foot of each sheet. It is
 * a file of its own because the policy of the pages lets no style stand in them. The head of each sheet says for
 * which build and which vehicle it was printed, so that a sheet that lies alone is still known.
 *
 * @param told the build that it is for, where it reads alike for all of its builds; else `null`
 */
export function pageFeet(
  { title, words }: Pick<Guide, 'title' | 'words'>,
  identity: string,
  told: string | null,
): string {
  // The page's script puts the chosen build here; without one it is written in by hand.
  const build = `Build: ${told ?? '____________________'}`;
  return [
    '@page {',
    `  @top-left { content: ${cssText(build)}; font: 8pt sans-serif; text-align: left; width: 60%; }`,
    `  @top-right { content: ${cssText(`${capitalised(words.registration)}: ____________________`)}; font: 8pt sans-serif; text-align: right; width: 40%; }`,
    `  @bottom-left { content: ${cssText(title.value)}; font: 8pt sans-serif; text-align: left; width: 40%; }`,
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
