import { posix } from 'node:path';
import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import { wholeFile } from '../source/span.ts';
import { namesAlike } from './rules.ts';

/**
 * Reports files and folders whose names differ in nothing but large and small letters, or in how an accent is put
 * together: one finding for a folder, whatever lies in it. `told` are paths of which more is wrong already.
 */
export function reportNamesAlike(files: Iterable<string>, told: readonly string[], report: Report): void {
  const names = new Map<string, string>();
  const folders = new Set<string>(told.map((path) => posix.dirname(path)));
  for (const path of files) {
    const parts = path.split('/');
    for (let depth = 1; depth <= parts.length; depth += 1) {
      const name = parts.slice(0, depth).join('/');
      const folded = foldedName(name);
      const known = names.get(folded);
      if (known === undefined) names.set(folded, name);
      if (known === undefined || known === name) continue;
      if (!folders.has(name) && !folders.has(known)) {
        const both = `${posix.basename(known)} and ${posix.basename(name)}`;
        const message = `${both} are one name on Windows and macOS, where one of the two is lost; rename one`;
        report(finding(namesAlike, wholeFile(path), message));
      }
      folders.add(name);
      // What lies in the folder is alike because of it.
      break;
    }
  }
}

/** A name as a disk compares it that takes large and small letters, and an accent however put together, for the same. */
export function foldedName(name: string): string {
  return name.normalize('NFC').toLowerCase();
}
