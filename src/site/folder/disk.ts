import { mkdirSync, renameSync, rmdirSync, rmSync, writeFileSync } from 'node:fs';

/** Every way in which a build changes the output folder; tests put one in its place that breaks off anywhere. */
export interface Disk {
  readonly makeFolder: (path: string) => void;
  readonly write: (path: string, content: string | Uint8Array) => void;
  /** Creates a file, and throws `EEXIST` where there is one. */
  readonly create: (path: string, content: string) => void;
  readonly rename: (from: string, to: string) => void;
  /** Removes a file, or a folder with all that is in it; nothing there is no fault. */
  readonly remove: (path: string) => void;
  /** Removes an empty folder. */
  readonly removeFolder: (path: string) => void;
}

/** The disk itself. */
export const realDisk: Disk = {
  makeFolder: (path) => void mkdirSync(path, { recursive: true }),
  write: (path, content) => writeFileSync(path, content),
  create: (path, content) => writeFileSync(path, content, { flag: 'wx' }),
  rename: (from, to) => renameSync(from, to),
  remove: (path) => rmSync(path, { recursive: true, force: true }),
  removeFolder: (path) => rmdirSync(path),
};
