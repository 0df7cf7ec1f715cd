import type { SourceFile } from '../../source/source-file.ts';

/** A guide's text with something written into it, or why it cannot be written so. */
export type TextWritten =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly problem: string };

/** A change of a text: what stands between two offsets gives way to other words, whose lines end with `\n`. */
export interface BenchEdit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

export const unsound = {
  ok: false,
  problem: 'the text of the guide has a fault that must be mended first; the page of the guide tells it',
} as const;

export const placeGone = {
  ok: false,
  problem: 'the guide has changed; choose the place again',
} as const;

/** Puts lines behind a place of the text, with an empty line on each side, as an author would. */
export function behindPlace({ text }: SourceFile, after: number, block: string): BenchEdit {
  const behind = text.slice(after);
  const gap = behind.trim() === '' || /^(?:\r\n|\n|\r){2}/.test(behind) ? '' : '\n';
  return { start: after, end: after, text: `\n\n${block}${gap}` };
}

/** The text with its changes, each line of which ends as the file's do. */
export function withEdits({ text }: SourceFile, edits: readonly BenchEdit[]): string {
  const ending = /\r\n|\n|\r/.exec(text)?.[0] ?? '\n';
  return [...edits]
    .sort((a, b) => b.start - a.start)
    .reduce(
      (now, edit) => now.slice(0, edit.start) + edit.text.replaceAll('\n', ending) + now.slice(edit.end),
      text,
    );
}
