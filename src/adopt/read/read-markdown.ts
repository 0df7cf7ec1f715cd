import { plainMarkdown } from '../../syntax/plain-markdown.ts';
import type { OldGuide } from './old-guide.ts';
import { pageFromMarkdown } from './page-tree.ts';
import { type PictureFinder, readPage } from './read-page.ts';

/** Reads ordinary Markdown with GitHub's tables, lists and footnotes; colons mean nothing in it. */
export function readMarkdownGuide(text: string, findPicture: PictureFinder): OldGuide {
  return readPage(pageFromMarkdown(plainMarkdown(text)), findPicture);
}
