import type { ReadingContext } from '../guide/index.ts';
import type { Shop } from '../model/shop.ts';
import type { SourceFile } from '../source/source-file.ts';
import { resolvePath } from './files/resolve-path.ts';
import { readText } from './files/text-files.ts';
import type { WorkspaceFiles } from './files/workspace-files.ts';

/** What a guide or a platform draws on while it is read. */
export function guideContext(
  { settings, crib, fastenerTypes, supplies, platforms }: Shop,
  procedures: ReadonlyMap<string, SourceFile>,
  files: Pick<WorkspaceFiles, 'read'>,
): ReadingContext {
  return {
    crib,
    fastenerTypes,
    supplies,
    platforms,
    words: settings.words,
    procedures,
    resolve: resolvePath,
    textOf: (path) => readText(files, path)?.text ?? null,
  };
}
