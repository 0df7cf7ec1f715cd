import type { Segment } from '../../geometry/segment.ts';

/** The lines and arcs of a file in millimetres, y up, or why they cannot be had. */
export type ReadSegments =
  | { readonly ok: true; readonly segments: readonly Segment[] }
  | { readonly ok: false; readonly message: string };
