import type { Block } from '../../model/block.ts';
import type { Span, Written } from '../../source/span.ts';

/** What is asked of a visit: by its file, or on the command line. */
export interface VisitRequest {
  /** The name of its file; on the command line, made of the names of its guides. */
  readonly id: string;
  readonly file: string;
  readonly title: Written<string>;
  /** `null` on the command line, where it is that of the guides. */
  readonly platform: Written<string> | null;
  /** What the build is known to have, as written: an option, a choice of one, or either with "no". */
  readonly build: readonly Written<string>[];
  readonly guides: readonly Written<string>[];
  /** What is said of the visit before the work. */
  readonly note: readonly Block[];
  readonly at: Span;
}
