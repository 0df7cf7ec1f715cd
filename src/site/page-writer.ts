import type { RenderLayout } from '../pages/layouts/layouts.ts';
import { deadLinks, type PageLinks, pageLinks } from './link-check.ts';
import type { Staging } from './output-folder.ts';

/** Writes pages one by one, none kept in memory, and knows in the end what is wrong with them. */
export interface PageWriter {
  /** Returns the bytes of the page; 0 where its layout fails. */
  readonly write: (path: string, layout: string, view: object) => Promise<number>;
  /** What a layout could not print, and links that lead nowhere; one sentence each. */
  readonly problems: () => readonly string[];
}

/** A writer into a staging folder. */
export function pageWriter(render: RenderLayout, staging: Staging): PageWriter {
  const problems: string[] = [];
  const links = new Map<string, PageLinks>();
  return {
    write: async (path, layout, view) => {
      const rendered = render(layout, view);
      if (!rendered.ok) {
        problems.push(`${path} could not be made: ${rendered.problem}`);
        return 0;
      }
      links.set(path, pageLinks(rendered.html));
      await staging.add(path, rendered.html);
      return Buffer.byteLength(rendered.html);
    },
    problems: () => {
      // A page that failed is missing for good reason; its links would only repeat that.
      if (problems.length > 0) return [...new Set(problems)];
      return deadLinks(links, staging.paths()).map(
        ({ page, href }) => `${page} links to ${href}, which leads nowhere`,
      );
    },
  };
}
