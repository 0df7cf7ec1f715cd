import { type Template, type Token, TypeGuards } from 'liquidjs';

/** A place in a layout; lines and columns count from 1. */
interface LayoutPlace {
  readonly layout: string;
  readonly line: number;
  readonly column: number;
}

/** Noncharacters (Unicode, 23.7), which no text that is meant to be read holds. */
const marks = /\uFDD0(\d+)\uFDD1/g;

/** Notes beside what layouts write which piece of them wrote it. */
export interface Trace {
  /** What a piece puts before its own output. */
  readonly mark: (template: Template) => string;
  /** The page without the marks, and the piece of a layout that wrote the character at an offset of it. */
  readonly read: (marked: string) => {
    readonly html: string;
    readonly placeAt: (offset: number) => LayoutPlace | null;
  };
}

/** A trace for one page. */
export function newTrace(): Trace {
  const tokens: Token[] = [];
  return {
    mark: ({ token }) => `\uFDD0${tokens.push(token) - 1}\uFDD1`,
    read: (marked) => {
      const pieces: { readonly start: number; readonly token: Token | undefined }[] = [];
      let dropped = 0;
      for (const match of marked.matchAll(marks)) {
        pieces.push({ start: match.index - dropped, token: tokens[Number(match[1])] });
        dropped += match[0].length;
      }
      return {
        html: marked.replace(marks, ''),
        placeAt: (offset) => {
          const piece = pieces.findLast(({ start }) => start <= offset);
          return piece?.token ? placeIn(piece.token, offset - piece.start) : null;
        },
      };
    },
  };
}

/** A place some characters into what a piece wrote; what a value wrote stands where the value does. */
function placeIn(token: Token, into: number): LayoutPlace {
  const start = TypeGuards.isHTMLToken(token) ? token.begin + token.trimLeft + into : token.begin;
  const before = token.input.slice(0, start);
  return {
    layout: token.file ?? '',
    line: before.split('\n').length,
    column: start - before.lastIndexOf('\n'),
  };
}
