import { sha256 } from '../../store/content-hash.ts';
import type { WorkspaceFiles } from './workspace-files.ts';

/** A workspace that is held in memory: text or bytes by path. */
export function memoryFiles(contents: { readonly [path: string]: string | Uint8Array }): WorkspaceFiles {
  const bytes = new Map(
    Object.entries(contents).map(([path, content]) => [
      path,
      typeof content === 'string' ? new TextEncoder().encode(content) : content,
    ]),
  );
  const sizes = [...bytes].map(([path, { length }]) => [path, length] as const);
  sizes.sort(([a], [b]) => (a < b ? -1 : 1));
  return {
    list: async () => ({ files: new Map(sizes), links: [], closed: [] }),
    read: (path) => bytes.get(path) ?? null,
    hash: (path) => {
      const content = bytes.get(path);
      return content ? sha256(content) : null;
    },
  };
}
