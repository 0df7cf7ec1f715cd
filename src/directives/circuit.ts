import type { Circuit } from '../model/item.ts';
import { meant } from './attributes/attribute.ts';
import { refs, size, wire, words } from './attributes/attribute-types.ts';
import { itemAttributes, itemBase, labelled } from './attributes/item-attributes.ts';
import { directive } from './directive.ts';

/** Declares a feed that the job lays. */
export const circuit = directive({
  name: 'circuit',
  form: 'leaf',
  label: 'required',
  attributes: {
    ...itemAttributes,
    load: meant(size('current'), 'What flows in it at most.'),
    length: meant(size('length'), 'Of the wire, one way. The way back is counted too.'),
    wire: meant(
      wire,
      'The size of the wire. Held against what it may carry, and against how much voltage it loses.',
    ),
    fuse: meant(
      size('current'),
      'What protects it. It must carry the load, and blow before the wire is too hot.',
    ),
    voltage: meant(size('voltage'), 'Of the supply that it hangs on.'),
    colour: meant(words, 'Of its insulation, as in `red` or `black with a white stripe`.'),
    ends: meant(
      refs,
      'What goes on its ends, one id or two. `with` names the tool that crimps or solders them; those from the box are counted against it.',
    ),
  },
  summary:
    'Declares a feed: its load, the length of its wire one way, the size and colour of the wire, what goes on its ends, and the fuse.',
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
      colour: values.colour,
      ends: values.ends?.value ?? [],
    };
  },
});
