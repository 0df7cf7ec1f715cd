import type { Supply } from '../model/item.ts';
import { flag, friction, quantity, ref } from './attribute-types.ts';
import { directive } from './directive.ts';
import { itemAttributes, itemBase, labelled } from './item-attributes.ts';

/** Declares something that is used up. */
export const supply = directive({
  name: 'supply',
  form: 'leaf',
  label: 'required',
  attributes: {
    ...itemAttributes,
    quantity: quantity('length', 'volume', 'mass', 'area'),
    temporary: flag,
    replaces: ref,
    friction,
  },
  summary:
    'Declares something that the job uses up, with how much of it; `temporary` must come off again, and one with `replaces` takes the place of what was there. `friction` says what it makes of a thread: every fastener with it as its `coat` is judged so.',
  example: '::supply[Masking tape, 25 mm]{#tape quantity="2 m" temporary}',
  build: (read): Supply | null => {
    const { values, directive: found } = read;
    const noun = labelled(found.labelText, undefined);
    if (!values.id || !noun) return null;
    return {
      ...itemBase('supply', read, values.id, noun),
      quantity: values.quantity,
      temporary: values.temporary !== null,
      replaces: values.replaces?.value ?? null,
      friction: values.friction,
    };
  },
});
