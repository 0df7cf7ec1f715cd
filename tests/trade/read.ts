import { type Drive, type FlatsDrive, parseDrive } from '../../src/trade/drives.ts';
import { parseThread, type Thread } from '../../src/trade/thread.ts';
import { parseWire, type Wire } from '../../src/trade/wire.ts';
import { parseQuantity, parseRange } from '../../src/units/parse.ts';
import type { Dimension, Quantity, QuantityRange } from '../../src/units/quantity.ts';

/** Reads test data and refuses what an author could not have written. */
function sound<T extends { readonly ok: boolean }>(parsed: T): Extract<T, { readonly ok: true }> {
  if (!parsed.ok) throw new Error(JSON.stringify(parsed));
  return parsed as Extract<T, { readonly ok: true }>;
}

export const drive = (text: string): Drive => sound(parseDrive(text)).drive;

export function flats(text: string): FlatsDrive {
  const read = drive(text);
  if (!('across' in read)) throw new Error(`${text} has no flats`);
  return read;
}

export const thread = (text: string): Thread => sound(parseThread(text)).thread;

export const wire = (text: string): Wire => sound(parseWire(text)).wire;

export function quantity<D extends Dimension>(text: string, dimension: D): Quantity<D> {
  return sound(parseQuantity(text, dimension)).quantity;
}

export function range<D extends Dimension>(text: string, dimension: D): QuantityRange<D> {
  return sound(parseRange(text, dimension)).range;
}

/** Printed text with its no-break spaces shown as ordinary ones. */
export const plain = (text: string): string => text.replace(/\u00a0/g, ' ');
