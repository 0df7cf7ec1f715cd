import type { ProseNode } from '../model/prose.ts';
import type { Span, Written } from '../source/span.ts';

/** One Markdown file as read: places kept, directives recognised by form, none of their meaning known yet. */
export interface Document {
  readonly file: string;
  /** The YAML between the opening `---` lines; `at` covers the YAML text alone. `null` where there is none. */
  readonly frontMatter: Written<string> | null;
  readonly nodes: readonly DocumentNode[];
  /** The footnotes' text, which stands at the end of the page; empty where there are none. */
  readonly footnotes: RawProse;
}

/** A block of a document, in the order of the text. */
export type DocumentNode = Heading | ProseBlock | LeafDirective | ContainerDirective;

/** Prose whose directives are still unread. */
export type RawProse = readonly ProseNode<TextDirective>[];

/** A heading, without the `{#id}` at its end. */
export interface Heading {
  readonly type: 'heading';
  readonly depth: 1 | 2 | 3 | 4 | 5 | 6;
  readonly id: Written<string> | null;
  readonly content: RawProse;
  /** The heading as plain text. */
  readonly text: string;
  readonly at: Span;
}

/** A paragraph, list, table, quotation, code block or rule of ordinary Markdown. */
interface ProseBlock {
  readonly type: 'prose';
  readonly content: RawProse;
  readonly at: Span;
}

/** What the three forms of directive share. */
export interface DirectiveBase {
  readonly type: 'directive';
  readonly name: string;
  readonly nameAt: Span;
  /** `null` where no label is written; `[]` is an empty label. */
  readonly label: RawProse | null;
  /** The label as plain text (a directive inside it counts with its own label); empty without a label. */
  readonly labelText: string;
  /** The text between the brackets; without a label, the place right after the name. */
  readonly labelAt: Span;
  /** In the order written; `{#x}` is the attribute `id`. Repeated ones are all here. */
  readonly attributes: readonly Attribute[];
  /** The whole directive, from its first colon to its end (a container: through its closing fence). */
  readonly at: Span;
}

/** `::name[label]{attributes}` on a line of its own. */
export interface LeafDirective extends DirectiveBase {
  readonly form: 'leaf';
}

/** `:::name[label]{attributes}` with content, closed by `:::`. */
export interface ContainerDirective extends DirectiveBase {
  readonly form: 'container';
  readonly children: readonly DocumentNode[];
  /** The opening line alone. */
  readonly openingAt: Span;
}

/** `:name[label]{attributes}` within a sentence. */
export interface TextDirective extends DirectiveBase {
  readonly form: 'text';
}

/** A directive in any of its forms. */
export type Directive = LeafDirective | ContainerDirective | TextDirective;

/** One attribute as written. */
export interface Attribute {
  readonly name: string;
  /** The decoded value without its quotes; `null` for a bare name (a flag). */
  readonly value: string | null;
  /** The name, or the `#` and the id. */
  readonly nameAt: Span;
  /** The value without its quotes; for a flag, the name. */
  readonly valueAt: Span;
}
