import type { PageContext } from '../pages/context.ts';
import { fastenerTypePage } from '../pages/fastener-type-page.ts';
import { glossaryPage } from '../pages/glossary-page.ts';
import { fastenerTypePath, glossaryPath, toolPath } from '../pages/reference-paths.ts';
import { toolPage } from '../pages/tool-page.ts';
import { survey } from '../pages/where-used.ts';
import type { PageWriter } from './page-writer.ts';
import type { Publication } from './publication.ts';

/** Writes a page for each tool and kind of fastener of the shop, and the glossary. */
export async function addReferencePages(
  { shop, guides: published }: Publication,
  pageFrom: (root: string) => PageContext,
  writer: PageWriter,
): Promise<void> {
  const guides = survey(published);
  for (const item of shop.crib.values()) {
    await writer.write(toolPath(item.id), 'reference.liquid', toolPage(item, guides, pageFrom('../../')));
  }
  for (const type of shop.fastenerTypes.values()) {
    const view = fastenerTypePage(type, guides, pageFrom('../../'));
    await writer.write(fastenerTypePath(type.id), 'reference.liquid', view);
  }
  await writer.write(glossaryPath, 'glossary.liquid', glossaryPage(guides, pageFrom('../')));
}
