import type { Heading } from 'mdast';
import type { SourceFile } from '../source/source-file.ts';

declare module 'unist' {
  interface Data {
    /** The id written at a heading's end: its value and its place, without `{#` and `}`. */
    headingId?: { readonly value: string; readonly start: number; readonly end: number };
  }
}

/** Takes `{#id}` off the end of a heading's text and keeps it, with its place, in the heading's data. */
export function takeHeadingId(heading: Heading, source: SourceFile): void {
  const last = heading.children.at(-1);
  const end = last?.position?.end.offset;
  if (last?.type !== 'text' || end === undefined) return;
  const written = /\{#([^\s{}#.]+)\}$/.exec(last.value);
  if (!written?.[1] || !source.text.slice(0, end).endsWith(written[0])) return;
  if (source.text[end - written[0].length - 1] === '\\') return;
  last.value = last.value.slice(0, written.index).trimEnd();
  if (last.value === '') heading.children.pop();
  const start = end - written[0].length + 2;
  heading.data = { ...heading.data, headingId: { value: written[1], start, end: end - 1 } };
}
