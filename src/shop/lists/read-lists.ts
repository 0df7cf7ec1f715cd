import type { Finding, Note } from '../../diagnostics/finding.ts';
import type { Report } from '../../diagnostics/report.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import type { PictureFact } from '../../model/guide.ts';
import type { Shop } from '../../model/shop.ts';
import type { Sources } from '../../source/source-file.ts';
import { wholeFile } from '../../source/span.ts';
import { shopMissing } from '../rules.ts';
import { cribFile, readCrib } from './crib.ts';
import { fastenersFile, readFastenerTypes } from './fastener-types.ts';
import type { ListEntry } from './list-entries.ts';
import { defaultSettings, readSettings, settingsFile } from './settings.ts';
import { readSupplies, suppliesFile } from './supplies.ts';

/** What the workspace's own files declare for all its guides. */
interface ShopLists
  extends Pick<Shop, 'settings' | 'crib' | 'fastenerTypes' | 'supplies' | 'ownPictures' | 'files'> {
  readonly faults: ListFaults;
}

/** The errors of single entries, by the entry's id: they are no matter of a guide that does not use it. */
export interface ListFaults {
  readonly crib: ReadonlyMap<string, readonly Finding[]>;
  readonly fastenerTypes: ReadonlyMap<string, readonly Finding[]>;
  readonly supplies: ReadonlyMap<string, readonly Finding[]>;
}

/** The files that all guides share. */
export const sharedFiles: ReadonlySet<string> = new Set([
  settingsFile,
  cribFile,
  fastenersFile,
  suppliesFile,
]);

/** Reads `shop.yaml`, the tool crib, the fastener types and the supplies; a list that is not there is empty. */
export function readLists(sources: Sources, files: ReadonlyMap<string, number>, report: Report): ShopLists {
  const settings = sources.get(settingsFile);
  const cribSource = sources.get(cribFile);
  const typesSource = sources.get(fastenersFile);
  const suppliesSource = sources.get(suppliesFile);
  const crib = cribSource ? readCrib(cribSource, report) : [];
  const types = typesSource ? readFastenerTypes(typesSource, report) : [];
  const supplies = suppliesSource ? readSupplies(suppliesSource, report) : [];
  if (!files.has(settingsFile)) {
    const message = 'this workspace has no shop.yaml; the least it says is "name: …"';
    report(finding(shopMissing, wholeFile(settingsFile), message, { notes: misnamed(settingsFile, files) }));
  }
  return {
    settings: settings ? readSettings(settings, files, report) : defaultSettings,
    crib: new Map(crib.flatMap(({ value }) => (value ? [[value.id, value]] : []))),
    fastenerTypes: new Map(types.flatMap(({ value }) => (value ? [[value.id, value]] : []))),
    supplies: new Map(supplies.flatMap(({ value }) => (value ? [[value.id, value]] : []))),
    ownPictures: new Map([...pictured('tool', crib), ...pictured('fastener', types)]),
    files,
    faults: { crib: faulty(crib), fastenerTypes: faulty(types), supplies: faulty(supplies) },
  };
}

function pictured(
  list: 'tool' | 'fastener',
  entries: readonly ListEntry<unknown>[],
): readonly (readonly [string, PictureFact])[] {
  return entries.flatMap(({ id, picture }) => (picture ? [[`${list} ${id}`, picture] as const] : []));
}

function faulty(entries: readonly ListEntry<unknown>[]): ReadonlyMap<string, readonly Finding[]> {
  return new Map(entries.flatMap(({ id, errors }) => (errors.length > 0 ? [[id, errors]] : [])));
}

/** Help for whoever has named a file almost right: `Shop.yml`. */
export function misnamed(file: string, files: ReadonlyMap<string, number>): readonly Note[] {
  const stem = file.replace(/\.yaml$/, '');
  const near = [...files.keys()].find((path) => new RegExp(`^${stem}s?\\.ya?ml(\\.txt)?$`, 'i').test(path));
  return near === undefined ? [] : [{ message: `there is a file ${near}; name it ${file}` }];
}
