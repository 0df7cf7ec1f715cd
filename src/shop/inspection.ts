import type { Finding } from '../diagnostics/finding.ts';
import type { Job } from '../model/job.ts';
import type { Shop } from '../model/shop.ts';
import type { Sources } from '../source/source-file.ts';

/** All that is known of a workspace once it has been read, computed and checked. */
export interface Inspection {
  readonly shop: Shop;
  /** By guide. */
  readonly jobs: ReadonlyMap<string, Job>;
  /** Sorted by file, place and code; each once. */
  readonly findings: readonly Finding[];
  /** Every text file that was read. */
  readonly sources: Sources;
  /** Guides without an error of their own, of their platform or of the shop; only these may be published. */
  readonly soundGuides: ReadonlySet<string>;
  /** The shop's own files that have an error on which every guide depends, so that no guide is sound. */
  readonly brokenForAll: readonly string[];
  /** Files that are meant to be guides, whether or not they could be read. */
  readonly guideCount: number;
}
