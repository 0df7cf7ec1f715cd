import { button, make } from './bay/elements.ts';
import { offerParcel } from './parcel.ts';

/** The site's root: this script lies in a folder of it, wherever the site is hosted. */
const script = document.currentScript;
const root = script instanceof HTMLScriptElement ? new URL('../', script.src) : null;
if (root?.protocol.startsWith('http')) startOffline(root);

/**
 * On a host, keeps the site on the device and tells of a newer build. From `file://` there is nothing to do: the
 * site is on the device.
 */
function startOffline(place: URL): void {
  const manifest = make('link', '');
  manifest.rel = 'manifest';
  manifest.href = new URL('manifest.webmanifest', place).href;
  document.head.append(manifest);
  if (!window.isSecureContext || !('serviceWorker' in navigator)) {
    tell('Over plain http a browser keeps nothing for later: this page needs the network each time.');
    return;
  }
  // The first build arrives while the page is open; only a later one makes it old.
  const old = navigator.serviceWorker.controller !== null;
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    if (old) location.reload();
  });
  navigator.serviceWorker.register(new URL('worker.js', place)).then(
    (registration) => {
      watch(registration, old);
      void navigator.serviceWorker.ready.then(({ active }) => {
        const folder = new URL('./', location.href).href;
        if (active) void offerParcel(active, decodeURIComponent(folder.slice(place.href.length)));
      });
    },
    () => tell('These guides could not be kept on this device: they need the network each time.'),
  );
}

function watch(registration: ServiceWorkerRegistration, old: boolean): void {
  const look = (): void => {
    if (registration.waiting && old) announce(registration.waiting);
  };
  const follow = (worker: ServiceWorker | null): void =>
    worker?.addEventListener('statechange', () => {
      look();
      if (worker.state === 'activated' && !old) tell(ready);
      if (worker.state === 'redundant' && !registration.active) tell(failed);
    });
  look();
  follow(registration.installing);
  registration.addEventListener('updatefound', () => follow(registration.installing));
  if (old) tell(ready);
  // A tablet in the bay keeps one page open all day.
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') registration.update().catch(() => undefined);
  });
}

const ready = 'These guides are kept on this device and need no network.';
const failed = 'These guides could not be kept on this device whole: they need the network each time.';

/** A line at the foot of the page. */
function tell(words: string): void {
  const foot = document.querySelector('.colophon');
  const line = foot?.querySelector('.kept') ?? make('p', 'kept');
  line.textContent = words;
  foot?.append(line);
}

function announce(waiting: ServiceWorker): void {
  if (document.querySelector('.newer')) return;
  const line = make('div', 'newer');
  line.setAttribute('role', 'status');
  document.body.prepend(line);
  line.append(
    make('p', '', 'A newer build of these guides is there. This page is of the old one.'),
    button('', 'Show the newer one', () => waiting.postMessage('take over')),
  );
}
