import type { Markup } from '../../html/markup.ts';
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

/** The card set of a guide, or of all guides of a platform: it reads with scripts off. */
export interface CardsView {
  readonly frame: FrameView;
  /** The page that the cards are made from. */
  readonly of: LinkView;
  /** "revision 3, 3f2a 9c04 b7d1"; `null` where there are several guides. */
  readonly edition: string | null;
  readonly groups: readonly { readonly title: string; readonly cards: readonly CardView[] }[];
}

/** A question with its answer, and the places that show it. */
export interface CardView {
  readonly ask: string;
  readonly only: string | null;
  /** From the side, and its drive from above. */
  readonly drawings: readonly Markup[];
  readonly answer: string;
  readonly places: readonly LinkView[];
}
