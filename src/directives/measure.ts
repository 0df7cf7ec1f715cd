import type { Measure } from '../model/item.ts';
import { range, recheck } from './attribute-types.ts';
import { directive } from './directive.ts';
import { itemAttributes, itemBase, labelled } from './item-attributes.ts';

/** Declares something to be measured and the range it must fall in. */
export const measure = directive({
  name: 'measure',
  form: 'leaf',
  label: 'required',
  attributes: {
    ...itemAttributes,
    expect: range(
      'length',
      'torque',
      'pressure',
      'angle',
      'temperature',
      'voltage',
      'current',
      'resistance',
      'mass',
      'time',
      'force',
      'volume',
      'power',
    ),
    recheck,
  },
  summary:
    'Declares a reading that is taken during the job, what is expected, and with `recheck` when the owner has it taken again.',
  example: '::measure[Ground clearance under the cradle]{#clearance expect="180..240 mm"}',
  build: (read): Measure | null => {
    const { values, directive: found } = read;
    const noun = labelled(found.labelText, undefined);
    if (!values.id || !noun) return null;
    return { ...itemBase('measure', read, values.id, noun), expect: values.expect, recheck: values.recheck };
  },
});
