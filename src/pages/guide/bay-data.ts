import type { TradeWords } from '../../trade/words.ts';

/** What the page's script must know of the guide to keep ticks and readings on the device. */
export interface BayData {
  readonly guide: string;
  readonly title: string;
  /** "revision 3, 2 October 2026"; empty where the guide states neither. */
  readonly edition: string;
  readonly fingerprint: string;
  readonly words: Pick<TradeWords, 'vehicle' | 'left' | 'right'>;
  readonly steps: readonly BayStep[];
}

/** A step as progress is kept for it. */
export interface BayStep {
  readonly id: string;
  readonly title: string;
  readonly fingerprint: string;
  /** Whether it is done on each side, and so ticked twice. */
  readonly sides: boolean;
  /** Minutes that nobody works after it. */
  readonly wait: number;
}
