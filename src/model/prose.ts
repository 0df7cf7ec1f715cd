import type { Span, Written } from '../source/span.ts';
import type { Action, Mention } from './inline.ts';
import type { When } from './when.ts';

/** Running text. */
interface ProseText {
  readonly type: 'text';
  readonly value: string;
  readonly at: Span | null;
}

/** An HTML element that Markdown makes: sanitised, with hast's property names. */
export interface ProseElement<I> {
  readonly type: 'element';
  readonly tagName: string;
  readonly properties: { readonly [name: string]: string | number | boolean | readonly (string | number)[] };
  readonly children: readonly ProseNode<I>[];
  /** Where the author wrote it; `null` for an element that the conversion added. */
  readonly at: Span | null;
}

/** A node of prose; `I` is what may stand within a sentence besides Markdown's own marks. */
export type ProseNode<I> = ProseText | ProseElement<I> | I;

/** What an author wrote as text: paragraphs, lists and tables, or a run of words, with Baybook's own nodes. */
export type Prose = readonly ProseNode<Inline>[];

/** Baybook's own nodes within a sentence. */
export type Inline = Mention | Action | Where;

/** Words that stand only for some builds: `:where[…]{when=fog}`. */
export interface Where {
  readonly type: 'where';
  readonly when: Written<When>;
  readonly children: Prose;
  readonly at: Span;
}
