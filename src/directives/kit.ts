import type { KitItem } from '../model/item.ts';
import { meant } from './attributes/attribute.ts';
import { ref, refs } from './attributes/attribute-types.ts';
import {
  fixing,
  fixingAttributes,
  itemAttributes,
  itemBase,
  labelled,
  pictureAttributes,
  takenPlaces,
} from './attributes/item-attributes.ts';
import { directive } from './directive.ts';

/** Declares something that comes in the accessory's box. */
export const kit = directive({
  name: 'kit',
  form: 'leaf',
  label: 'required',
  attributes: {
    ...itemAttributes,
    ...pictureAttributes,
    ...fixingAttributes,
    covers: meant(refs, 'What cannot be reached while it is in place: parts, fasteners or plugs.'),
    ...takenPlaces,
    'chosen-by': meant(
      ref,
      'The measure or inspection that says how many of them are fitted. The rest is left over by right.',
    ),
  },
  summary:
    'Declares something that comes in the box; with a drive, thread or torque, or where it holds something or replaces a fastener, it is a fastener too. With `chosen-by` (a measure or an inspection) so many are fitted as that asks for, as shims are, and the rest is left over by right.',
  example: '::kit[M8 flange nut]{#m8-nut count=4 thread=M8x1.25 drive="hex 13" torque="25 N·m"}',
  build: (read): KitItem | null => {
    const { values, directive: found } = read;
    const noun = labelled(found.labelText, undefined);
    if (!values.id || !noun) return null;
    const chosenBy = values['chosen-by']?.value ?? null;
    const base = itemBase('kit', read, values.id, noun);
    return {
      ...base,
      // What is chosen by a reading waits for it.
      needs: chosenBy ? [...base.needs, chosenBy] : base.needs,
      chosenBy,
      ...fixing(values, found.at),
      spare: values.spare,
      isFastener: [values.drive, values.thread, values.torque, values.holds].some((value) => value !== null),
      covers: values.covers?.value ?? [],
      takes: values.takes?.value ?? [],
    };
  },
});
