import type { BuildList } from '../../../src/site/site-build.ts';

export type { BuildList };

/** A build in its place: where the site begins, and the cache that holds this build and no other. */
export interface PlacedBuild extends BuildList {
  readonly scope: string;
  readonly cache: string;
}
