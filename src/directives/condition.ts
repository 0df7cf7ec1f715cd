import type { Condition } from '../model/item.ts';
import { flag, words } from './attribute-types.ts';
import { directive } from './directive.ts';
import { itemAttributes, itemBase, labelled } from './item-attributes.ts';

/** Declares a state of the vehicle that has to hold for a while. */
export const condition = directive({
  name: 'condition',
  form: 'leaf',
  label: 'required',
  attributes: { ...itemAttributes, stays: flag, set: words, clear: words },
  summary:
    'Declares a state that is set and later cleared, with what is told there; `stays` frees it from being cleared. With `needs` it holds only while that holds: it lapses with it, comes back only by being set again, and need not be cleared then.',
  example:
    '::condition[Battery isolated]{#battery-off immobile set="unbolt the negative lead" clear="bolt the negative lead down"}',
  build: (read): Condition | null => {
    const { values, directive: found } = read;
    const noun = labelled(found.labelText, undefined);
    if (!values.id || !noun) return null;
    return {
      ...itemBase('condition', read, values.id, noun),
      stays: values.stays !== null,
      setWords: values.set?.value ?? null,
      clearWords: values.clear?.value ?? null,
    };
  },
});
