/** What a workspace holds, as far as Baybook is willing to read it. */
export interface Listing {
  /** Size in bytes of every file, by its path from the workspace's root with forward slashes. */
  readonly files: ReadonlyMap<string, number>;
  /** Paths of symbolic links, which are not followed: they could lead out of the workspace. */
  readonly links: readonly string[];
  /** Paths of folders that cannot be opened. */
  readonly closed: readonly string[];
}

/** The files of a workspace: on disk for the commands, in memory for tests and the editor. */
export interface WorkspaceFiles {
  /** Lists the files; throws where the workspace itself cannot be read. */
  list(): Promise<Listing>;
  /** Reads a file; `null` where it is not there or cannot be read. */
  read(path: string): Uint8Array | null;
  /** SHA-256 of a file in hexadecimal; `null` where it cannot be read. */
  hash(path: string): string | null;
}
