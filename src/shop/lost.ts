import { idsMeant, type Lost } from '../checks/index.ts';
import type { Finding } from '../diagnostics/finding.ts';
import type { Guide } from '../model/guide.ts';
import { lineColumn, lineText, type Sources } from '../source/source-file.ts';

/**
 * What the faults found while reading a guide have cost. A declaration (a line that begins with `::`) with an
 * error on it may be missing from the guide; a mention whose id cannot be read, or is not declared, was meant for
 * what the likely mend says.
 */
export function lostTo(guide: Guide, findings: readonly Finding[], sources: Sources): Lost {
  const ids = new Set(idsMeant(guide));
  const declarations = new Set<string>();
  for (const { severity, at, suggestion } of findings) {
    const source = sources.get(at.file);
    if (severity !== 'error' || !source) continue;
    if (suggestion) ids.add(suggestion.text);
    const line = lineText(source, lineColumn(source, at.start).line);
    const name = /^:{2,3}([a-z-]+)/.exec(line)?.[1];
    const named = [...line.matchAll(/#([a-z0-9]+(?:-[a-z0-9]+)*)/g)].flatMap(([, id]) => id ?? []);
    // Most faults cost one attribute: what is named is there all the same.
    if (name === undefined || (named.length > 0 && named.every((id) => isThere(id, guide)))) continue;
    declarations.add(name);
    for (const id of named) ids.add(id);
  }
  return { ids, declarations };
}

function isThere(id: string, { items, anchors }: Guide): boolean {
  return items.has(id) || anchors.has(id);
}
