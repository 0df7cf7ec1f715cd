import { answer } from './worker/answer.ts';
import { cachePrefix, dropOthers, fill } from './worker/build-cache.ts';
import { type ParcelAsk, parcelState } from './worker/parcels.ts';
import type { BuildList } from './worker/site-build.ts';

/**
 * The offline worker of a site. One worker belongs to one build: it keeps that build whole, each file proved by
 * its hash, and answers from nothing else. A newer build waits, complete, until the technician takes it or the
 * last page of the old one is closed; where it cannot be had complete it is dropped, and the old one stays.
 */

/** What is used of a service worker's global scope, which the types of pages do not know. */
interface WorkerScope {
  readonly siteBuild: BuildList;
  readonly registration: { readonly scope: string };
  readonly skipWaiting: () => Promise<void>;
}

type Lasting = Event & { readonly waitUntil: (work: Promise<unknown>) => void };
type Asked = Event & { readonly request: Request; readonly respondWith: (answer: Promise<Response>) => void };

const { siteBuild, registration, skipWaiting } = self as unknown as WorkerScope;
const site = {
  ...siteBuild,
  scope: registration.scope,
  cache: cachePrefix(registration.scope) + siteBuild.build,
};

addEventListener('install', (event) => (event as Lasting).waitUntil(fill(site)));
addEventListener('activate', (event) => (event as Lasting).waitUntil(dropOthers(site)));
addEventListener('message', (event) => {
  const { data, ports, waitUntil } = event as MessageEvent<'take over' | ParcelAsk> & Lasting;
  if (data === 'take over') void skipWaiting.call(self);
  else
    waitUntil.call(
      event,
      parcelState(data, site).then((state) => ports[0]?.postMessage(state)),
    );
});
addEventListener('fetch', (event) => {
  const { request, respondWith } = event as Asked;
  const found = answer(request, site);
  if (found) respondWith.call(event, found);
});
