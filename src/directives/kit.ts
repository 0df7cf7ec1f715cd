import type { KitItem } from '../model/item.ts';
import { meant } from './attribute.ts';
import { refs } from './attribute-types.ts';
import { directive } from './directive.ts';
import { fixing, fixingAttributes, itemAttributes, itemBase, labelled } from './item-attributes.ts';

/** Declares something that comes in the accessory's box. */
export const kit = directive({
  name: 'kit',
  form: 'leaf',
  label: 'required',
  attributes: {
    ...itemAttributes,
    ...fixingAttributes,
    covers: meant(refs, 'What cannot be reached while it is in place: parts, fasteners or plugs.'),
  },
  summary:
    'Declares something that comes in the box; with a drive, thread or torque, or where it holds something or replaces a fastener, it is a fastener too.',
  example: '::kit[M8 flange nut]{#m8-nut count=4 thread=M8x1.25 drive="hex 13" torque="25 N·m"}',
  build: (read): KitItem | null => {
    const { values, directive: found } = read;
    const noun = labelled(found.labelText, undefined);
    if (!values.id || !noun) return null;
    return {
      ...itemBase('kit', read, values.id, noun),
      ...fixing(values, found.at),
      spare: values.spare,
      isFastener: [values.drive, values.thread, values.torque, values.holds].some((value) => value !== null),
      covers: values.covers?.value ?? [],
    };
  },
});
