/**
 * What a trade calls the thing that it works on and the ways around it, wherever Baybook itself prints them: a shop
 * for boats says boat, port and starboard. Each stands as in the middle of a sentence. What an author writes is
 * never touched by it.
 */
export interface TradeWords {
  readonly vehicle: string;
  /** Several of them. */
  readonly vehicles: string;
  readonly left: string;
  readonly right: string;
  /** What one of them is known by; printed as a label. */
  readonly registration: string;
}

/** The words of a shop that says nothing else. */
export const usualWords: TradeWords = {
  vehicle: 'vehicle',
  vehicles: 'vehicles',
  left: 'left',
  right: 'right',
  registration: 'vehicle registration',
};

/** The words that are other than usual; `null` where all are usual. */
export function ownWords(words: TradeWords): Partial<TradeWords> | null {
  const own = Object.entries(words).filter(([key, word]) => word !== usualWords[key as keyof TradeWords]);
  return own.length === 0 ? null : Object.fromEntries(own);
}
