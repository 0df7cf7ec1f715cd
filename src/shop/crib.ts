import type { Report } from '../diagnostics/report.ts';
import { tool } from '../directives/tool.ts';
import { wear } from '../directives/wear.ts';
import type { Tool, Wear } from '../model/item.ts';
import type { SourceFile } from '../source/source-file.ts';
import { yamlYesNo } from '../syntax/read-yaml.ts';
import { emptyScope } from './empty-scope.ts';
import { readEntries } from './list-entries.ts';

export const cribFile = 'tools.yaml';

/** Reads the tool crib: what the shop owns, by id. `wear: yes` marks protective equipment. */
export function readCrib(source: SourceFile, report: Report): ReadonlyMap<string, Tool | Wear> {
  const crib = new Map<string, Tool | Wear>();
  const entries = readEntries(
    source,
    { wear: yamlYesNo.optional() },
    ({ wear }) => (wear ? 'wear' : 'tool'),
    report,
  );
  for (const entry of entries) {
    const item = (entry.name === 'wear' ? wear : tool).read(entry, emptyScope(report));
    if (item) crib.set(item.id, item.kind === 'tool' ? { ...item, inCrib: true } : item);
  }
  return crib;
}
