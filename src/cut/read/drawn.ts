import type { Piece } from './piece.ts';

/** What an author says about a drawing besides its path. */
export interface WantedShape {
  /** Names of the layers that are read; `null` reads all. */
  readonly layers: readonly string[] | null;
  /** Millimetres in one unit of a file that does not say its own; `null` where the guide does not say it. */
  readonly unit: number | null;
}

/** One piece of a drawing in millimetres, y up, with the layer on which it is drawn. */
export interface DrawnPiece {
  readonly piece: Piece;
  readonly layer: string;
}

/** What a file draws. */
export interface DrawnFile {
  readonly pieces: readonly DrawnPiece[];
  /** What stands in the file and is not cut, in words: `text`, `a shape that is not shown`. */
  readonly leftOut: readonly string[];
  /** Names of all layers that the file has. */
  readonly layers: readonly string[];
}

/** A layer's name as it is compared: programs differ in what they make of capitals. */
export function plainName(layer: string): string {
  return layer.trim().toLowerCase();
}
