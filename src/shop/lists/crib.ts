import type { Report } from '../../diagnostics/report.ts';
import type { DirectiveReader } from '../../directives/directive.ts';
import { tool } from '../../directives/tool.ts';
import { wear } from '../../directives/wear.ts';
import type { Tool, Wear } from '../../model/item.ts';
import type { SourceFile } from '../../source/source-file.ts';
import { yamlKey, yamlYesNo } from '../../syntax/read-yaml.ts';
import { type ListEntry, ownAlt, ownPicture, readEntries } from './list-entries.ts';

export const cribFile = 'tools.yaml';

/** What an entry of the crib says besides what a tool does. */
export const ownKeys = {
  wear: yamlKey(
    yamlYesNo.optional(),
    '`yes` or `no`',
    '`yes` for protective equipment, which guides declare with `::wear`.',
  ),
  picture: ownPicture,
  alt: ownAlt,
};

/** Reads the tool crib: what the shop owns. `wear: yes` marks protective equipment. */
export function readCrib(source: SourceFile, report: Report): readonly ListEntry<Tool | Wear>[] {
  return readEntries<Tool | Wear>(source, ownKeys, (entry) => (entry.wear ? wear : ownedTool), report);
}

const ownedTool: DirectiveReader<Tool> = {
  ...tool,
  read: (found, scope) => {
    const item = tool.read(found, scope);
    return item && { ...item, inCrib: true };
  },
};
