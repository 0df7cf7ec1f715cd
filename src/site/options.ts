import type { Store } from '../store/store.ts';

/** What a site may be built with besides its workspace. */
export interface SiteOptions {
  /** Publishes the sound guides even where others have errors. */
  readonly keepGoing?: boolean;
  /** Keeps derived pictures between runs. */
  readonly pictures?: Store;
  /** Is told how many of the site's pages and pictures are done. */
  readonly progress?: (done: number, of: number) => void;
}
