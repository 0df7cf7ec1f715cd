import type { Fonts } from '../cut/drawing/metrics.ts';
import { prepareLayouts, type RenderLayout } from '../pages/layouts/layouts.ts';
import type { WorkspaceFiles } from '../shop/workspace-files.ts';
import { browserScript } from './scripts.ts';
import { readTemplates } from './templates.ts';

/** What all pages of a site are made with. */
export interface SiteKit {
  readonly render: RenderLayout;
  /** The texts of the style sheets, by file name. */
  readonly styles: ReadonlyMap<string, string>;
  /** The browser scripts, by name. */
  readonly scripts: ReadonlyMap<string, string>;
  readonly fonts: Fonts;
}

/** The browser scripts that a site has. */
const scriptNames = ['guide', 'alone', 'correct-print', 'search', 'offline', 'worker'] as const;

/**
 * Readies the layouts, styles and scripts, with the shop's own layouts and styles in their places.
 *
 * @param paths of the workspace
 */
export async function readKit(
  files: WorkspaceFiles,
  paths: Iterable<string>,
  fonts: Fonts,
): Promise<SiteKit> {
  const templates = await readTemplates({ paths, read: files.read });
  const scripts = scriptNames.map(async (name) => [name, await browserScript(name)] as const);
  return {
    render: prepareLayouts(templates.layouts),
    styles: templates.styles,
    scripts: new Map(await Promise.all(scripts)),
    fonts,
  };
}
