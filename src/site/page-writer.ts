import type { RenderLayout } from '../pages/layouts/layouts.ts';
import { contentHash } from '../store/content-hash.ts';
import { readContent, readJson, type Store, writeJson } from '../store/store.ts';
import { type PageLinks, pageLinks } from './guides/link-check.ts';
import { keepFile, type MadeFile } from './guides/made.ts';

/** Writes pages one by one, none kept in memory; what the store has of an equal view is not made again. */
export interface PageWriter {
  readonly write: (path: string, layout: string, view: object) => void;
  readonly files: () => readonly MadeFile[];
  readonly links: () => readonly PageLinks[];
  /** What a layout could not print, one sentence each. */
  readonly problems: () => readonly string[];
}

/** A page as the store has it: its bytes stand under their hash. */
interface KeptPage {
  readonly hash: string;
  readonly links: PageLinks;
}

/**
 * A writer of pages.
 *
 * @param basis names the work of this Baybook with this shop's layouts, apart from any other
 */
export function pageWriter(render: RenderLayout, store: Store, basis: string): PageWriter {
  const problems: string[] = [];
  const links: PageLinks[] = [];
  const files: MadeFile[] = [];
  return {
    write: (path, layout, view) => {
      const name = `page-${contentHash(basis, path, layout, JSON.stringify(view))}.json`;
      const kept = readJson<KeptPage>(store, name);
      if (kept && readContent(store, kept.hash)) {
        links.push(kept.links);
        files.push({ path, hash: kept.hash });
        return;
      }
      const rendered = render(layout, view);
      if (!rendered.ok) {
        problems.push(`${path} could not be made: ${rendered.problem}`);
        return;
      }
      const own = pageLinks(path, rendered.html);
      const file = keepFile(store, path, rendered.html);
      links.push(own);
      files.push(file);
      if (!file.bytes) writeJson(store, name, { hash: file.hash, links: own } satisfies KeptPage);
    },
    files: () => files,
    links: () => links,
    problems: () => problems,
  };
}
