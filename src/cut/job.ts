import type { Face } from '../model/cut-template.ts';
import type { PaperName } from '../trade/paper.ts';
import { type Correction, correctionStamp } from '../trade/print-check.ts';
import type { TradeWords } from '../trade/words.ts';
import type { Fonts, Metrics } from './drawing/metrics.ts';

/** What a template is printed for; everything that the geometry does not know. */
export interface CutContext {
  readonly guideTitle: string;
  /** As the guide states it: `3`; empty where it states none. */
  readonly revision: string;
  readonly fingerprint: string;
  readonly words: TradeWords;
  /** "Not verified since step 7 changed"; `null` or absent where nothing is to be said. */
  readonly standing?: string | null;
  /** Whether every sheet says DRAFT across it. */
  readonly draft?: boolean;
  readonly papers: readonly PaperName[];
  readonly fonts: Fonts;
  /** Which side to draw; of a template that is made for both, `null` draws both. */
  readonly side: 'left' | 'right' | null;
  /** Face to print for, where it is not the one that the template is drawn on. */
  readonly face?: Face;
  /** Factors for one printer, from the print check. */
  readonly correction?: Correction;
}

/** A context with its metrics, for the drawing of one paper. */
export interface SheetContext extends CutContext {
  readonly metrics: Metrics;
}

/** For which side of the vehicle and on which face of its panel a template is: "LEFT SIDE, OUTSIDE face". */
export function sideAndFace({ words }: CutContext, side: CutContext['side'], face: Face): string {
  return `${side ? `${words[side].toUpperCase()} SIDE, ` : ''}${face.toUpperCase()} face`;
}

/** "Revision 3 · fingerprint 4f7a-19c2"; a guide without a revision leaves no gap for it. */
export function revisionLine({ revision, fingerprint }: CutContext): string {
  return revision === '' ? `Fingerprint ${fingerprint}` : `Revision ${revision} · fingerprint ${fingerprint}`;
}

/** What every sheet says about itself. */
export function identityLines(context: CutContext, side: CutContext['side'], face: Face): string[] {
  const { correction } = context;
  return [
    `${side ? '' : 'Laid on the '}${sideAndFace(context, side, face)}`,
    revisionLine(context),
    'SCALE 1:1 · cut the middle of the wide line',
    ...(context.standing ? [context.standing] : []),
    // Short enough for the strip of a tile.
    ...(correction ? [correctionStamp(correction)] : []),
  ];
}
