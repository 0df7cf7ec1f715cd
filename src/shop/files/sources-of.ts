import type { Finding } from '../../diagnostics/finding.ts';
import type { Sources } from '../../source/source-file.ts';
import { readText } from './text-files.ts';
import type { WorkspaceFiles } from './workspace-files.ts';

/** The texts to which findings point, read for their excerpts. */
export function sourcesOf(findings: readonly Finding[], files: WorkspaceFiles): Sources {
  const places = findings.flatMap(({ at, notes }) => [at, ...notes.flatMap((note) => note.at ?? [])]);
  const paths = [...new Set(places.map(({ file }) => file))];
  return new Map(
    paths.flatMap((path) => {
      const source = readText(files, path);
      return source ? [[path, source] as const] : [];
    }),
  );
}
