import { sha256 } from '../../store/content-hash.ts';
import type { WorkspaceFiles } from './workspace-files.ts';

/** A file is no longer what it was a moment ago, so that what was checked is not what would be published. */
export class ChangedMeanwhile extends Error {
  constructor(path: string) {
    super(`${path} was changed or taken away while the guides were being read; run it again`);
  }
}

/** What stands for the hash of a file that is not there. */
export const noFile = 'none';

/**
 * Files that must stay what they were at their first reading; reading one again that has changed throws
 * {@link ChangedMeanwhile}.
 *
 * @param note is told each reading with the SHA-256 of what was read
 */
export function steadyFiles(
  files: Pick<WorkspaceFiles, 'read'>,
  note: (path: string, hash: string) => void = () => undefined,
): Pick<WorkspaceFiles, 'read'> {
  const seen = new Map<string, string>();
  return {
    read: (path) => {
      const bytes = files.read(path);
      const hash = bytes ? sha256(bytes) : noFile;
      if ((seen.get(path) ?? hash) !== hash) throw new ChangedMeanwhile(path);
      seen.set(path, hash);
      note(path, hash);
      return bytes;
    },
  };
}
