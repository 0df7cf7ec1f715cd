import type { InspectionItem } from '../model/item.ts';
import { type AttributeType, bad, meant, required } from './attributes/attribute.ts';
import { refs } from './attributes/attribute-types.ts';
import { itemAttributes, itemBase, labelled } from './attributes/item-attributes.ts';
import { directive } from './directive.ts';

const outcomes: typeof refs extends AttributeType<infer T> ? AttributeType<T> : never = {
  expects: 'two outcomes or more, set apart by spaces, as in `clean rusty worn-out`',
  read: (text, at) => {
    const reading = refs.read(text, at);
    if (!reading.ok) return reading;
    return new Set(reading.value.map(({ value }) => value)).size === reading.value.length &&
      reading.value.length > 1
      ? reading
      : bad('an inspection has two outcomes or more, and each once: name what may be found');
  },
};

/** Declares something that is looked at, so that what follows can hang on what is found. */
export const inspection = directive({
  name: 'inspection',
  form: 'leaf',
  label: 'required',
  attributes: {
    ...itemAttributes,
    outcomes: meant(
      required(outcomes),
      'What may be found, one id for each. A condition asks for one with `is`, as in `thread is worn-out`.',
    ),
  },
  summary:
    'Declares something that is looked at during the job, and what may be found. `:inspect` looks at it; after that, steps and words hang on it like on an option, as in `when="thread is worn-out"`. It is no option: nobody knows it before the vehicle is apart, so page and print show every way until it is found, and a step marked `stop` ends the job there.',
  example: '::inspection[Thread of the mount bolt]{#thread outcomes="clean rusty worn-out"}',
  build: (read): InspectionItem | null => {
    const { values, directive: found } = read;
    const noun = labelled(found.labelText, undefined);
    if (!values.id || !values.outcomes || !noun) return null;
    return { ...itemBase('inspection', read, values.id, noun), outcomes: values.outcomes.value };
  },
});
