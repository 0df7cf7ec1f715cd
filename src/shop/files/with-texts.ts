import { sha256 } from '../../store/content-hash.ts';
import type { WorkspaceFiles } from './workspace-files.ts';

/** The same workspace, with other texts in the place of some of its files. */
export function withTexts(files: WorkspaceFiles, texts: ReadonlyMap<string, string>): WorkspaceFiles {
  const bytes = new Map([...texts].map(([path, text]) => [path, Buffer.from(text)]));
  return {
    list: async () => {
      const listing = await files.list();
      const sizes = [...listing.files].map(
        ([path, size]) => [path, bytes.get(path)?.length ?? size] as const,
      );
      return { ...listing, files: new Map(sizes) };
    },
    read: (path) => bytes.get(path) ?? files.read(path),
    hash: (path) => {
      const own = bytes.get(path);
      return own ? sha256(own) : files.hash(path);
    },
  };
}
