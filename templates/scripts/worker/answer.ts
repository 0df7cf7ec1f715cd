import { hashOf, proved, urlOf } from './build-cache.ts';
import type { PlacedBuild } from './site-build.ts';

/** What the worker answers; `null` leaves the request to the browser, since it is not for this site's files. */
export function answer(request: Request, site: PlacedBuild): Promise<Response> | null {
  const { origin, pathname } = new URL(request.url);
  const begin = new URL(site.scope);
  if (request.method !== 'GET' || origin !== begin.origin || !pathname.startsWith(begin.pathname))
    return null;
  const path = filePath(pathname.slice(begin.pathname.length));
  const hash = hashOf(path, site);
  if (hash !== null) return ofBuild(path, hash, site);
  // In the site's own folders another build would answer: its page beside our styles is a mixture.
  return ownFolders(site).has(path.split('/')[0] ?? '') ? Promise.resolve(missing(request)) : null;
}

/** The file for a path of an address: a folder is its first page. */
function filePath(written: string): string {
  const path = decoded(written);
  return path === '' || path.endsWith('/') ? `${path}index.html` : path;
}

function decoded(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    return path;
  }
}

/** A file from the device; one that is not there is taken from the host only where it is that of this build. */
async function ofBuild(path: string, hash: string, site: PlacedBuild): Promise<Response> {
  const cache = await caches.open(site.cache);
  const there = await cache.match(urlOf(path, site));
  if (there) return there;
  try {
    return await proved(urlOf(path, site), hash);
  } catch {
    return page(
      503,
      'This file is not on this device, and the network does not give it as this build has it.',
    );
  }
}

function ownFolders({ kept: files }: PlacedBuild): ReadonlySet<string> {
  return new Set(
    Object.keys(files).flatMap((path) => (path.includes('/') ? [path.split('/')[0] ?? ''] : [])),
  );
}

function missing({ mode }: Request): Response {
  if (mode !== 'navigate') return Response.error();
  return page(404, 'This page is not among the guides kept on this device. A newer build may have it.');
}

function page(status: number, words: string): Response {
  const html = `<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>Not here</title><p>${words}</p></html>`;
  return new Response(html, { status, headers: { 'content-type': 'text/html; charset=utf-8' } });
}
