import type { Store } from '../store/store.ts';

/** What a command may see of the world it runs in; tests hand in their own. */
export interface Io {
  /** Writes to standard output; the text brings its own line ending. */
  readonly out: (text: string) => void;
  /** Writes to standard error. */
  readonly err: (text: string) => void;
  /** The folder that paths on the command line start from. */
  readonly cwd: string;
  /** Cells of a line. */
  readonly width: number;
  readonly colour: boolean;
  /** Whether somebody watches, so that progress is worth showing. */
  readonly watched: boolean;
  /** Asks a person for a line; `null` where nobody is there to answer. */
  readonly ask: ((question: string) => Promise<string>) | null;
  /** How many threads may share the work. */
  readonly threads: number;
  /** Keeps finished work between runs. */
  readonly store: Store;
}

/** 0: clean, or warnings only. 1: errors. 2: wrong usage. */
export type ExitCode = 0 | 1 | 2;

/** The command was used wrongly; the message is all that is said. */
export class UsageError extends Error {}
