import { keepFiles, urlOf } from './build-cache.ts';
import type { PlacedBuild } from './site-build.ts';

/** What a page asks of the parcel of a guide's folder: to tell of it, or to keep it first. */
export interface ParcelAsk {
  readonly folder: string;
  readonly keep: boolean;
}

/** What the worker says of a parcel. */
export interface ParcelState {
  readonly weight: string;
  readonly isHeavy: boolean;
  /** True once all of it is on the device. */
  readonly isKept: boolean;
}

/** Tells of the parcel of a folder, kept before where that is asked; `null` for a folder that has none. */
export async function parcelState(
  { folder, keep }: ParcelAsk,
  site: PlacedBuild,
): Promise<ParcelState | null> {
  const parcel = Object.hasOwn(site.parcels, folder) ? site.parcels[folder] : undefined;
  if (!parcel) return null;
  const { weight, isHeavy, paths } = parcel;
  // What came before the network went stays; the answer says that it is not all.
  if (keep) await keepFiles(paths, site).catch(() => undefined);
  const cache = await caches.open(site.cache);
  const found = await Promise.all(paths.map((path) => cache.match(urlOf(path, site))));
  return { weight, isHeavy, isKept: found.every(Boolean) };
}
