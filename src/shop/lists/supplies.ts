import type { Report } from '../../diagnostics/report.ts';
import { supply } from '../../directives/supply.ts';
import type { Supply } from '../../model/item.ts';
import type { SourceFile } from '../../source/source-file.ts';
import { type ListEntry, readEntries } from './list-entries.ts';

export const suppliesFile = 'supplies.yaml';

/** Reads the products that the shop uses up, with what is known of each. */
export function readSupplies(source: SourceFile, report: Report): readonly ListEntry<Supply>[] {
  return readEntries<Supply>(source, {}, () => supply, report);
}
