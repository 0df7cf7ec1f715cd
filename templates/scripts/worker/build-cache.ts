import type { PlacedBuild } from './site-build.ts';

/** Files fetched at once: a phone's browser opens about as many connections to a host. */
const AT_ONCE = 6;

/** What the names of all caches of a site begin with: one host may carry several sites. */
export function cachePrefix(scope: string): string {
  return `baybook ${scope} `;
}

/** Fills the cache of a build; with one file missing or of another build, there is none of it at all. */
export async function fill(site: PlacedBuild): Promise<void> {
  try {
    const again = await keptBefore(site);
    await keepFiles([...Object.keys(site.kept), ...again], site);
  } catch (error) {
    await caches.delete(site.cache);
    throw error;
  }
}

/** Keeps files of a build, six at once; throws at the first that cannot be had as this build has it. */
export async function keepFiles(paths: readonly string[], site: PlacedBuild): Promise<void> {
  const cache = await caches.open(site.cache);
  for (let start = 0; start < paths.length; start += AT_ONCE) {
    await Promise.all(
      paths.slice(start, start + AT_ONCE).map(async (path) => {
        const url = urlOf(path, site);
        const hash = hashOf(path, site) ?? '';
        await cache.put(url, (await present(url, hash)) ?? (await proved(url, hash)));
      }),
    );
  }
}

/** The parcels that somebody has had kept of an earlier build: what was asked for once stays. */
async function keptBefore(site: PlacedBuild): Promise<readonly string[]> {
  const parcels = Object.values(site.parcels).map(async ({ paths }) => {
    const found = await Promise.all(paths.map((path) => caches.match(urlOf(path, site))));
    return found.some(Boolean) ? paths : [];
  });
  return (await Promise.all(parcels)).flat();
}

/** The hash of a file of the build; `null` for what is none. */
export function hashOf(path: string, { kept, asked }: PlacedBuild): string | null {
  if (Object.hasOwn(kept, path)) return kept[path] ?? null;
  return Object.hasOwn(asked, path) ? (asked[path] ?? null) : null;
}

/** Drops the other builds of this site, once no page shows them. */
export async function dropOthers({ scope, cache }: PlacedBuild): Promise<void> {
  const names = await caches.keys();
  const others = names.filter((name) => name.startsWith(cachePrefix(scope)) && name !== cache);
  await Promise.all(others.map((name) => caches.delete(name)));
}

/** The address of a file; a `#` or `?` in its name is no part of an address. */
export function urlOf(path: string, { scope }: PlacedBuild): string {
  return scope + path.split('/').map(encodeURIComponent).join('/');
}

/** Fetches a file past every cache, and throws where it is not the file of this build. */
export async function proved(url: string, hash: string): Promise<Response> {
  const response = await fetch(url, { cache: 'no-store' });
  const copy = response.ok ? await sameFile(response, hash) : null;
  if (!copy) throw new Error(`not the file of this build: ${url}`);
  return copy;
}

/** A file that an earlier build has brought, where it has not changed. */
async function present(url: string, hash: string): Promise<Response | null> {
  const found = await caches.match(url);
  return found ? sameFile(found, hash) : null;
}

/** The file as a response of its own, without the marks of a redirect; `null` where it has another hash. */
async function sameFile(response: Response, hash: string): Promise<Response | null> {
  const bytes = await response.arrayBuffer();
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  if ([...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('') !== hash) return null;
  const type = response.headers.get('content-type');
  return new Response(bytes, { headers: type ? { 'content-type': type } : {} });
}
