import type { Span } from '../source/span.ts';
import type { PictureBox } from './block.ts';

/** A named part of a platform's drawing, in which parts of the vehicle lie. */
export interface Zone {
  readonly id: string;
  /** "Front end", as declared. */
  readonly label: string;
  /** Where it lies in the upright, uncropped drawing; `null` where that could not be read. */
  readonly box: PictureBox | null;
  readonly idAt: Span;
  readonly at: Span;
}
