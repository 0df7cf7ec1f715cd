import type { Cost } from '../../diagnostics/finding.ts';
import type { Span } from '../../source/span.ts';

/** A value read from an attribute, or why it cannot be read. */
export type Reading<T> =
  | { readonly ok: true; readonly value: T }
  | {
      readonly ok: false;
      /** What was found and what was expected. */
      readonly message: string;
      /** Text to put in the place of the value. */
      readonly suggestion?: string | undefined;
      /** The part of the value that is at fault, where it is not the whole. */
      readonly at?: Span;
    };

/** How the text of one attribute is read. */
export interface AttributeType<T> {
  /** What an author writes, for the format reference: "a length, as in `12.5 mm`". */
  readonly expects: string;
  /** A flag is written without a value. */
  readonly flag?: boolean;
  /** Without it, the directive means nothing. */
  readonly required?: boolean;
  /** What nobody knows of a guide where the value cannot be read. */
  readonly costs?: Cost;
  readonly read: (text: string, at: Span) => Reading<T>;
}

/** An attribute of a directive: how its text is read, and what it says of the thing. */
export interface Meant<T> extends AttributeType<T> {
  /** A sentence or two for the handbook, in a technician's words; it begins large and ends with a full stop. */
  readonly means: string;
}

/** The attributes of a directive by name. */
export type AttributeTypes = { readonly [name: string]: Meant<unknown> };

/** The same attribute, now required. */
export function required<A extends AttributeType<unknown>>(type: A): A {
  return { ...type, required: true };
}

/** An attribute with what it means. */
export function meant<T>(type: AttributeType<T>, means: string): Meant<T> {
  return { ...type, means };
}

/** A value that was read. */
export function good<T>(value: T): Reading<T> {
  return { ok: true, value };
}

/** A value that could not be read. */
export function bad<T>(message: string, suggestion?: string, at?: Span): Reading<T> {
  return { ok: false, message, suggestion, ...(at ? { at } : {}) };
}
