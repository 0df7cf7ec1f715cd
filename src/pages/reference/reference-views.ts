import type { Markup } from '../../html/markup.ts';
import type { OwnPictureView } from '../frame/own-picture.ts';
import type { FrameView, LinkView } from '../frame/shared-views.ts';
import type { SignalBar } from '../steps/block-views.ts';

/** A guide in which something is used, and the places where it is. */
export interface UsedInView {
  readonly guide: LinkView;
  readonly platform: string;
  /** What of the guide it is: "M8 flange nut, 4". */
  readonly items: readonly string[];
  readonly places: readonly PlaceView[];
}

/** A step of a guide, or a section that no step stands for. */
interface PlaceView extends LinkView {
  /** The step's number on the page on which all builds stand; `null` for a section. */
  readonly number: number | null;
}

/** A line of a table of facts, with a small drawing where there is one. */
export interface FactView {
  readonly label: string;
  readonly drawing: Markup | null;
  readonly text: string;
  /** Where the fact is explained. */
  readonly href: string | null;
}

/** A tool, protective equipment or a kind of fastener of the shop. */
export interface ReferenceView {
  readonly frame: FrameView;
  /** What the page is about, in the trade's word: "Tool". */
  readonly kicker: string;
  readonly title: string;
  /** What it looks like, and its name for whoever cannot see it. */
  readonly picture: OwnPictureView | null;
  /** A sign, or the shape of its kind. */
  readonly drawing: Markup | null;
  /** What to know of it, in a sentence. */
  readonly lead: string | null;
  readonly facts: readonly FactView[];
  readonly uses: readonly UsedInView[];
  /** How many more guides use it than stand in `uses`. */
  readonly unlisted: number;
}

/** The glossary: every term under its kind. */
export interface GlossaryView {
  readonly frame: FrameView;
  readonly groups: readonly { readonly title: string; readonly terms: readonly TermView[] }[];
}

/** An entry of the glossary. */
export interface TermView {
  readonly id: string;
  readonly term: string;
  readonly drawing: Markup | null;
  /** The bar as the messages of this shop have it, for a signal word. */
  readonly bar: SignalBar | null;
  readonly meaning: string;
  readonly synonyms: string;
  readonly standard: string | null;
  /** Tools and kinds of fastener of the shop that it applies to. */
  readonly related: readonly LinkView[];
  readonly uses: readonly UsedInView[];
  /** How many more guides use it than stand in `uses`. */
  readonly unlisted: number;
}

/** The page that opens the record of a vehicle. What it shows is the page's script. */
export interface RecordsView {
  readonly frame: FrameView;
  /** The guides and visits of the site as JSON, by which a record says whether its guide has changed. */
  readonly guides: Markup;
}

/** What the first page lists besides the guides. */
export interface ListsView {
  readonly title: string;
  readonly links: readonly LinkView[];
}

/** What the search can be narrowed to. */
export interface FindView {
  readonly kinds: readonly { readonly value: string; readonly name: string }[];
  readonly platforms: readonly { readonly value: string; readonly name: string }[];
}
