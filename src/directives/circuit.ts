import type { Circuit } from '../model/item.ts';
import { size, wire } from './attribute-types.ts';
import { directive } from './directive.ts';
import { itemAttributes, itemBase, labelled } from './item-attributes.ts';

/** Declares a feed that the job lays. */
export const circuit = directive({
  name: 'circuit',
  form: 'leaf',
  label: 'required',
  attributes: {
    ...itemAttributes,
    load: size('current'),
    length: size('length'),
    wire,
    fuse: size('current'),
    voltage: size('voltage'),
  },
  summary: 'Declares a feed: its load, the length of its wire one way, the size of the wire and the fuse.',
  example:
    '::circuit[Vent feed]{#vent-feed load="3.5 A" length="6 m" wire="2.5 mm²" fuse="10 A" voltage="12 V"}',
  build: (read): Circuit | null => {
    const { values, directive: found } = read;
    const noun = labelled(found.labelText, undefined);
    if (!values.id || !noun) return null;
    return {
      ...itemBase('circuit', read, values.id, noun),
      load: values.load,
      length: values.length,
      wire: values.wire,
      fuse: values.fuse,
      voltage: values.voltage,
    };
  },
});
