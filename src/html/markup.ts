const brand = Symbol('markup');

/**
 * HTML that Baybook's own code made and that a layout may put out unescaped. The brand is a symbol held by
 * this file, so that no data that a layout reads (a title, a label, a shop's text) can pass for markup.
 */
export interface Markup {
  readonly [brand]: true;
  readonly html: string;
}

/** Marks HTML as safe to put out. Only for what was stringified from a tree or is written in this repository. */
export function markup(html: string): Markup {
  return { [brand]: true, html };
}

/** Whether a value that a layout reads is branded HTML. */
export function isMarkup(value: unknown): value is Markup {
  return typeof value === 'object' && value !== null && brand in value;
}

/** Text as HTML, fit for an element's content and for a quoted attribute. */
export function escapeText(text: string): string {
  return text.replace(/[&<>"']/g, (character) => `&#${character.charCodeAt(0)};`);
}
