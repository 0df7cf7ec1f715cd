import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import type { Shop } from '../model/shop.ts';
import type { Sources } from '../source/source-file.ts';
import { wholeFile } from '../source/span.ts';
import { cribFile, readCrib } from './crib.ts';
import { fastenersFile, readFastenerTypes } from './fastener-types.ts';
import { shopMissing } from './rules.ts';
import { defaultSettings, readSettings, settingsFile } from './settings.ts';

/** What the workspace's own files declare for all its guides. */
export type ShopLists = Pick<Shop, 'settings' | 'crib' | 'fastenerTypes' | 'files'>;

/** The files that all guides depend on: an error in one of them makes no guide sound. */
export const sharedFiles: ReadonlySet<string> = new Set([settingsFile, cribFile, fastenersFile]);

/** Reads `shop.yaml`, the tool crib and the fastener types; a list that is not there is empty. */
export function readLists(sources: Sources, files: ReadonlyMap<string, number>, report: Report): ShopLists {
  const settings = sources.get(settingsFile);
  const crib = sources.get(cribFile);
  const types = sources.get(fastenersFile);
  if (!files.has(settingsFile)) {
    const message = 'this workspace has no shop.yaml; the least it says is "name: …"';
    report(finding(shopMissing, wholeFile(settingsFile), message));
  }
  return {
    settings: settings ? readSettings(settings, files, report) : defaultSettings,
    crib: crib ? readCrib(crib, report) : new Map(),
    fastenerTypes: types ? readFastenerTypes(types, report) : new Map(),
    files,
  };
}
