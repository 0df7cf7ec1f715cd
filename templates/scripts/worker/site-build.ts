import type { SiteBuild } from '../../../src/site/site-build.ts';

export type { SiteBuild };

/** A build in its place: where the site begins, and the cache that holds this build and no other. */
export interface PlacedBuild extends SiteBuild {
  readonly scope: string;
  readonly cache: string;
}
