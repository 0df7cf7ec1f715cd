import type { Connector } from '../model/item.ts';
import { meant } from './attributes/attribute.ts';
import { refs } from './attributes/attribute-types.ts';
import {
  counted,
  countedAttributes,
  itemAttributes,
  itemBase,
  labelled,
  pictureAttributes,
  takenPlaces,
} from './attributes/item-attributes.ts';
import { directive } from './directive.ts';

/** Declares a connector and what it sits on. */
export const connector = directive({
  name: 'connector',
  form: 'leaf',
  label: 'required',
  attributes: {
    ...itemAttributes,
    ...pictureAttributes,
    ...countedAttributes,
    on: meant(
      refs,
      'The part that it sits on. That part is not lifted away before it is apart; on something from the box it begins apart.',
    ),
    ...takenPlaces,
  },
  summary:
    'Declares a connector and the part it sits on; one on a kit item begins apart. It is connected to what is in place, hangs aside, or is in the hand: the same step goes on to put it in.',
  example: '::connector[Fog lamp plug]{#fog-plug side=each on=cover when=fog}',
  build: (read): Connector | null => {
    const { values, directive: found } = read;
    const noun = labelled(found.labelText, undefined);
    if (!values.id || !noun) return null;
    return {
      ...itemBase('connector', read, values.id, noun),
      ...counted(values, found.at),
      on: values.on?.value ?? [],
      takes: values.takes?.value ?? [],
    };
  },
});
