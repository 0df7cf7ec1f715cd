import type { FrameView, LinkView } from '../frame/shared-views.ts';
import type { BlockView } from '../steps/block-views.ts';

/** The page on which a guide is rehearsed. What is chosen and answered is the page's script. */
export interface RehearsalView {
  readonly frame: FrameView;
  readonly title: string;
  /** The guide's own page. */
  readonly guide: LinkView;
  /** "revision 3, 3f2a 9c04 b7d1". */
  readonly edition: string;
  /** What is shown of each step: its safety messages and its pictures. */
  readonly steps: readonly { readonly id: string; readonly blocks: readonly BlockView[] }[];
}
