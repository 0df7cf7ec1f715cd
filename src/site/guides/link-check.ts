import { posix } from 'node:path';

/** What a page offers to links and asks of the site, as plain data. */
export interface PageLinks {
  /** The page's own path, from the site's root. */
  readonly path: string;
  /** Its ids, a line each. */
  readonly ids: string;
  /** The addresses of other files, as written. */
  readonly hrefs: readonly string[];
  /** Addresses of places that it does not have itself. */
  readonly dead: readonly string[];
}

/** A link of the built site that leads nowhere. */
interface DeadLink {
  readonly page: string;
  readonly href: string;
}

/** Reads ids and addresses from the HTML of a page. */
export function pageLinks(path: string, html: string): PageLinks {
  const ids = new Set<string>();
  const hrefs = new Set<string>();
  for (const [, name, double, single = ''] of html.matchAll(
    /\s(id|href|src|srcset)=(?:"([^"]*)"|'([^']*)')/g,
  )) {
    const text = decoded(double ?? single);
    if (name === 'id') ids.add(text);
    else if (name === 'srcset') for (const one of text.split(',')) hrefs.add(one.trim().split(/\s/)[0] ?? '');
    else hrefs.add(text);
  }
  const inside = [...hrefs].filter((href) => !isOutside(href));
  const own = (href: string) => href === '' || href.startsWith('#');
  // A copy, since an address that is cut out of a page holds the whole page in memory.
  return structuredClone({
    path,
    ids: [...ids].join('\n'),
    hrefs: inside.filter((href) => !own(href)),
    dead: inside.filter((href) => href.length > 1 && own(href) && !ids.has(unescaped(href.slice(1)))),
  });
}

/**
 * The links that lead to no file or to no place on its page. Addresses of other hosts are left alone; a link
 * to a folder is dead, since from a stick it opens a list of files.
 *
 * @param files every file of the site
 */
export function deadLinks(
  pages: readonly PageLinks[],
  files: { readonly has: (path: string) => boolean },
): readonly DeadLink[] {
  const byPath = new Map(pages.map((page) => [page.path, page]));
  const places = new Map<string, ReadonlySet<string>>();
  const idsOf = (path: string) => {
    const known = places.get(path);
    if (known) return known;
    const ids = new Set(byPath.get(path)?.ids.split('\n'));
    places.set(path, ids);
    return ids;
  };
  const isDead = (page: string, href: string) => {
    const [path = '', place] = href.split('#', 2);
    const target = posix.join(posix.dirname(page), unescaped(path));
    if (!files.has(target)) return true;
    if (!place || !target.endsWith('.html')) return false;
    return !idsOf(target).has(unescaped(place));
  };
  return pages.flatMap(({ path, hrefs, dead }) =>
    [...dead, ...hrefs.filter((href) => isDead(path, href))].map((href) => ({ page: path, href })),
  );
}

function isOutside(href: string): boolean {
  return /^[a-z][a-z0-9+.-]*:/i.test(href);
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
  if (!text.includes('&')) return text;
  return text.replace(/&(#?\w+);/g, (whole, name: string) => entities[name] ?? whole);
}
