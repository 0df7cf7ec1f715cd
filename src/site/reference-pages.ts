import type { Chapter } from '../handbook/chapters.ts';
import { handbookPages } from '../handbook/site-pages.ts';
import type { PageContext } from '../pages/frame/context.ts';
import { fastenerTypePath, glossaryPath, toolPath } from '../pages/frame/reference-paths.ts';
import { fastenerTypePage } from '../pages/reference/fastener-type-page.ts';
import { glossaryPage } from '../pages/reference/glossary-page.ts';
import { toolPage } from '../pages/reference/tool-page.ts';
import { byTitle } from '../pages/reference/where-used.ts';
import type { PageWriter } from './page-writer.ts';
import type { Publication } from './publication.ts';

/** Writes a page for each tool and kind of fastener of the shop, the glossary and the handbook. */
export function addReferencePages(
  { shop, summaries }: Publication,
  pageFrom: (root: string) => PageContext,
  writer: PageWriter,
  chapters: readonly Chapter[],
): void {
  const guides = byTitle(summaries);
  for (const item of shop.crib.values()) {
    writer.write(toolPath(item.id), 'reference.liquid', toolPage(item, guides, pageFrom('../../')));
  }
  for (const type of shop.fastenerTypes.values()) {
    const view = fastenerTypePage(type, guides, pageFrom('../../'));
    writer.write(fastenerTypePath(type.id), 'reference.liquid', view);
  }
  writer.write(glossaryPath, 'glossary.liquid', glossaryPage(guides, pageFrom('../')));
  for (const [path, view] of handbookPages(chapters, pageFrom('../')))
    writer.write(path, 'handbook.liquid', view);
}
