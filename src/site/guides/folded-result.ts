import { bringsBytes } from './made.ts';
import type { GuideResult } from './turn.ts';

/**
 * What a guide gave, as a thread hands it over and a run over thousands holds it until the last is done: as JSON in
 * UTF-8, which no collection goes through, and half as large. A result that brings the bytes of files along stays as it is.
 */
export type FoldedResult = Uint8Array | GuideResult;

/** Folds a result. */
export function foldResult(result: GuideResult): FoldedResult {
  return bringsBytes(result.made) ? result : new TextEncoder().encode(JSON.stringify(result));
}

/** A result that was folded. */
export function unfoldResult(folded: FoldedResult): GuideResult {
  return folded instanceof Uint8Array ? JSON.parse(new TextDecoder().decode(folded)) : folded;
}
