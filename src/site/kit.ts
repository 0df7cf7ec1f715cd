import type { Fonts } from '../cut/drawing/metrics.ts';
import type { Chapter } from '../handbook/chapters.ts';
import { compactStyle } from '../html/compact-style.ts';
import { styleRequests } from '../html/style-requests.ts';
import { oncePer } from '../job/once.ts';
import { type Layouts, prepareLayouts, type RenderLayout } from '../pages/layouts/layouts.ts';
import type { WorkspaceFiles } from '../shop/files/workspace-files.ts';
import { readChapters } from './chapters.ts';
import { type AloneScript, scriptFolder } from './guides/folded.ts';
import { browserScript } from './scripts.ts';
import { readTemplates } from './templates.ts';

/** What all pages of a site are made with. */
export interface SiteKit {
  readonly render: RenderLayout;
  /** The texts of the style sheets, by file name. */
  readonly styles: ReadonlyMap<string, string>;
  /** The same in as few bytes as they take, as a guide in one file carries them. */
  readonly compactStyles: ReadonlyMap<string, string>;
  /** The browser scripts that lie in a site, by name. */
  readonly scripts: ReadonlyMap<string, string>;
  /** The script of a guide in one file, which unfolds these style sheets as well. */
  readonly aloneScript: (later: readonly string[]) => AloneScript;
  readonly fonts: Fonts;
  readonly chapters: readonly Chapter[];
  /** What of the shop's own style sheets cannot be published, one sentence each. */
  readonly problems: readonly string[];
}

/** The browser scripts that a site has. */
const scriptNames = [
  'guide',
  'correct-print',
  'rehearse',
  'cards',
  'search',
  'offline',
  'vehicle-record',
  'worker',
] as const;

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
  const [alone, unfold] = await Promise.all(['alone', 'unfold'].map(browserScript));
  const hasOwn = [...templates.own].some((name) => templates.layouts.has(name));
  return {
    render: hasOwn ? await guardedLayouts(templates.layouts) : preparedOnce(templates.layouts),
    styles: templates.styles,
    compactStyles: new Map([...templates.styles].map(([name, text]) => [name, compactStyle(text)])),
    problems: [...templates.own].flatMap((name) =>
      styleRequests(templates.styles.get(name) ?? '').map(
        ({ line, text }) => `templates/${name}:${line} asks another host: ${text}`,
      ),
    ),
    scripts: new Map(await Promise.all(scripts)),
    aloneScript: scriptFolder(alone ?? '', unfold ?? ''),
    fonts,
    chapters: await readChapters(),
  };
}

/** The built-in layouts are the same for all sites of a run. */
const preparedOnce = oncePer((layouts: Layouts) => prepareLayouts(layouts));

/** The guard reads whole pages; a shop without layouts of its own need not load it. */
async function guardedLayouts(layouts: Layouts): Promise<RenderLayout> {
  const { prepareOwnLayouts } = await import('../pages/layouts/own-layouts.ts');
  return prepareOwnLayouts(layouts);
}
