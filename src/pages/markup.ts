const brand = Symbol('markup');

/**
 * HTML that Baybook's own code made and that a layout may put out unescaped. The brand is a symbol held by
 * this file, so that no data that a layout reads (a title, a label, a shop's text) can pass for markup.
 */
export interface Markup {
  readonly [brand]: true;
  readonly html: string;
}

/** Marks HTML as safe to put out. Only for what has been stringified from a tree or written in this repository. */
export function markup(html: string): Markup {
  return { [brand]: true, html };
}

/** Whether a value of a layout is branded HTML. */
export function isMarkup(value: unknown): value is Markup {
  return typeof value === 'object' && value !== null && brand in value;
}

/** Text as HTML, for the few places where a view joins text and markup. */
export function escaped(text: string): string {
  return text
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/'/g, '&#39;');
}

/**
 * Data for a script, as JSON that may stand in a `<script type="application/json">`: nothing in it can end
 * the element.
 */
export function jsonMarkup(value: unknown): Markup {
  return markup(JSON.stringify(value).replace(/</g, '\\u003c'));
}
