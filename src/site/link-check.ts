import { posix } from 'node:path';

/** A link of the built site that leads nowhere. */
export interface DeadLink {
  readonly page: string;
  readonly href: string;
}

/** What a page offers to links and asks of the site. */
export interface PageLinks {
  readonly ids: ReadonlySet<string>;
  readonly hrefs: readonly string[];
}

/** Reads ids and addresses from the HTML of a page. */
export function pageLinks(html: string): PageLinks {
  const values = (pattern: RegExp) => [...html.matchAll(pattern)].map((match) => decoded(match[2] ?? ''));
  const sets = values(/\ssrcset=(["'])(.*?)\1/gs).flatMap((set) =>
    set.split(',').map((one) => one.trim().split(/\s/)[0] ?? ''),
  );
  return {
    ids: new Set(values(/\sid=(["'])(.*?)\1/gs)),
    hrefs: [...new Set([...values(/\s(?:href|src)=(["'])(.*?)\1/gs), ...sets])],
  };
}

/**
 * The links that lead to no file or to no place on its page. Addresses of other hosts are left alone; a link
 * to a folder is dead, since from a stick it opens a list of files.
 *
 * @param pages the links of each page, by its path
 * @param files every file of the site
 */
export function deadLinks(
  pages: ReadonlyMap<string, PageLinks>,
  files: ReadonlySet<string>,
): readonly DeadLink[] {
  return [...pages].flatMap(([page, { hrefs }]) =>
    hrefs.filter((href) => isDead(page, href, pages, files)).map((href) => ({ page, href })),
  );
}

function isDead(
  page: string,
  href: string,
  pages: ReadonlyMap<string, PageLinks>,
  files: ReadonlySet<string>,
): boolean {
  if (/^[a-z][a-z0-9+.-]*:/i.test(href)) return false;
  const [path = '', place] = href.split('#', 2);
  const target = path === '' ? page : posix.join(posix.dirname(page), unescaped(path));
  if (!files.has(target)) return true;
  if (!place || !target.endsWith('.html')) return false;
  return !pages.get(target)?.ids.has(unescaped(place));
}

function unescaped(address: string): string {
  try {
    return decodeURIComponent(address);
  } catch {
    return address;
  }
}

const entities: { readonly [entity: string]: string } = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  '#39': "'",
  '#x26': '&',
};

function decoded(text: string): string {
  return text.replace(/&(#?\w+);/g, (whole, name: string) => entities[name] ?? whole);
}
