import { guideFolder, platformFolder } from '../pages/frame/context.ts';
import { fileId } from '../shop/discover.ts';
import type { Workspace } from '../shop/open-workspace.ts';

/**
 * The page that a file of a workspace becomes, from the site's root; `null` for a file that becomes none.
 *
 * @param unpublished files of guides and platforms that stay out of the site
 */
export function sitePages(
  { found }: Pick<Workspace, 'found'>,
  unpublished: ReadonlySet<string> = new Set(),
): (path: string) => string | null {
  const pages = new Map([
    ...found.guides.map((path) => [path, `${guideFolder({ id: guideId(path) })}index.html`] as const),
    ...found.platforms.map((path) => [path, `${platformFolder(fileId(path))}index.html`] as const),
  ]);
  return (path) => (unpublished.has(path) ? null : (pages.get(path) ?? null));
}

/** The id of a guide: the name of its folder. */
export function guideId(path: string): string {
  return path.slice(0, path.indexOf('/'));
}
