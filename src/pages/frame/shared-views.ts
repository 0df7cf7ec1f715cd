import type { Markup } from '../../html/markup.ts';
import type { PrintedWords } from './printed-words.ts';

/**
 * What the layouts read. Every field is text that the layout escapes, or {@link Markup}; nothing here needs
 * working out. A value that a page may lack is `null`, never missing, since layouts refuse unknown names.
 */

/** For which plans something stands: both `null` where it stands for all. */
export interface Shown {
  /** Positions of the plans, parted by spaces, for `data-plans`. */
  readonly plans: string | null;
  /** The same for people: "with front fog lamps". */
  readonly only: string | null;
}

/** Text that may differ between plans. */
export interface VaryingView extends Shown {
  readonly text: string;
}

/** A link within the site, relative to the page it stands on. */
export interface LinkView {
  readonly text: string;
  readonly href: string;
}

/** A step named elsewhere on the page. Its number is that of the page on which all builds stand. */
export interface StepRef extends Shown {
  readonly id: string;
  readonly number: number;
  readonly title: string;
}

/** A picture file with its size in CSS pixels. */
export interface SizedPicture {
  readonly src: string;
  readonly width: number;
  readonly height: number;
}

/** What every page has around its content. */
export interface FrameView {
  /** The page's title, as the browser's tab shows it. */
  readonly title: string;
  /** Read by every layout as `words`, without being handed on. */
  readonly words: PrintedWords;
  /** From the page to the site's root: empty, or `../` as often as needed. */
  readonly root: string;
  readonly shop: string;
  readonly logo: SizedPicture | null;
  /** Style sheets, relative to the page. */
  readonly styles: readonly string[];
  /** Scripts of the page, relative to the page. */
  readonly scripts: readonly string[];
  /** The content security policy. */
  readonly policy: Markup;
  /** What a page that must stand alone holds in the place of files; `null` for a page of the site. */
  readonly inlined: {
    readonly style: Markup;
    readonly script: Markup;
    /** Where its page is published, with the sheets and their print check; `null` where the shop has no address. */
    readonly page: string | null;
  } | null;
}
