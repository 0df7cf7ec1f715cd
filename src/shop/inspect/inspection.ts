import type { Guide } from '../../model/guide.ts';
import type { Job } from '../../model/job.ts';
import type { Shop } from '../../model/shop.ts';
import type { Sources } from '../../source/source-file.ts';
import type { Verdict } from './verdict.ts';

/** All that is known of a workspace once it has been read, computed and checked, every guide of it held. */
export interface Inspection extends Verdict {
  readonly shop: Shop;
  readonly guides: readonly { readonly guide: Guide; readonly job: Job }[];
  /** The visits that could be planned, each as a guide like any other. */
  readonly visits: readonly { readonly guide: Guide; readonly job: Job }[];
  /** The texts in which something was found. */
  readonly sources: Sources;
}
