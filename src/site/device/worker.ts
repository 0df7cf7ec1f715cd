import { createHash } from 'node:crypto';
import type { BuildList, Parcel } from '../site-build.ts';

/** The place of the worker: it serves the folder it lies in and all below. */
export const workerPath = 'worker.js';

/**
 * The worker of a build: its list of files, then the script. A changed file changes the list and so the worker,
 * which is how a browser learns of a newer build.
 *
 * @param hashes SHA-256 of every file of the site, by path
 * @param parcels files that are too heavy to be kept on every device, by the folder of their guide
 */
export function workerScript(
  hashes: ReadonlyMap<string, string>,
  parcels: ReadonlyMap<string, Parcel>,
  script: string,
): string {
  return `globalThis.siteBuild=${JSON.stringify(siteBuild(hashes, parcels))};\n${script}`;
}

/** The files of a site with their hashes, as its worker lists them; empty where that cannot be read. */
export function listedIn(worker: string): Readonly<Record<string, string>> {
  const list = /^globalThis\.siteBuild=(.*);$/m.exec(worker)?.[1];
  try {
    const { kept, asked }: Partial<BuildList> = JSON.parse(list ?? '{}');
    return { ...kept, ...asked };
  } catch {
    return {};
  }
}

function siteBuild(hashes: ReadonlyMap<string, string>, parcels: ReadonlyMap<string, Parcel>): BuildList {
  const asked = new Set([...parcels.values()].flatMap(({ paths }) => paths));
  const files = [...hashes].sort(([a], [b]) => (a < b ? -1 : 1));
  const list = files.map(([path, hash]) => `${hash} ${path}\n`).join('');
  return {
    build: createHash('sha256').update(list).digest('hex'),
    kept: Object.fromEntries(files.filter(([path]) => !asked.has(path))),
    asked: Object.fromEntries(files.filter(([path]) => asked.has(path))),
    parcels: Object.fromEntries(parcels),
  };
}
