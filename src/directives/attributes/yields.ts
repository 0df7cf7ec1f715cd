import type { Yield } from '../../model/item.ts';
import { parseQuantity } from '../../units/parse.ts';
import { type AttributeType, bad, good } from './attribute.ts';

const kinds = ['area', 'length'] as const;
const measures = ['length', 'volume', 'mass', 'area'] as const;

/** How far a product goes: the area or the length that so much of it does. */
export const yields: AttributeType<Yield> = {
  expects: 'an area or a length, and how much does it, as in `8 m² per l`, `2 m per 100 ml`',
  read: (text) => {
    const parts = text.split(/\s+per\s+/);
    const [does = '', of = ''] = parts;
    if (parts.length !== 2) {
      return bad(`"${text}" does not say how much does it; write it as in "8 m² per l" or "2 m per 100 ml"`);
    }
    const done = kinds.map((kind) => parseQuantity(does, kind)).find((one) => one.ok);
    // "per l" is per one litre.
    const amount = /^\d/.test(of) ? of : `1 ${of}`;
    const used = measures.map((kind) => parseQuantity(amount, kind)).find((one) => one.ok);
    if (!done?.ok) return bad(`"${does}" is neither an area nor a length with its unit, as in "8 m²"`);
    if (!used?.ok) return bad(`"${of}" is no amount of a product, as in "l", "m" or "100 ml"`);
    if (done.quantity.base <= 0 || used.quantity.base <= 0) return bad(`"${text}" does nothing at all`);
    return good({ does: done.quantity, of: used.quantity });
  },
};
