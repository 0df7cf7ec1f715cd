import type { Setting } from '../model/item.ts';
import { meant, required } from './attributes/attribute.ts';
import { words } from './attributes/attribute-types.ts';
import { itemAttributes, itemBase, labelled } from './attributes/item-attributes.ts';
import { directive } from './directive.ts';

/** Declares something that is set to another value: a coding, a switch, a dial. */
export const setting = directive({
  name: 'setting',
  form: 'leaf',
  label: 'required',
  attributes: {
    ...itemAttributes,
    from: meant(required(words), 'What it stands at as the vehicle comes.'),
    to: meant(required(words), 'What it is set to.'),
  },
  summary:
    'Declares a value that is set during the job, such as a coding with a tester: what it stands at as the vehicle comes, and what it is set to. `:set` prints both, `:clear` sets it back, and the print has a line for it.',
  example: '::setting[Coding of the trailer module]{#trailer-code from="not fitted" to="13-pin socket"}',
  build: (read): Setting | null => {
    const { values, directive: found } = read;
    const noun = labelled(found.labelText, undefined);
    if (!values.id || !values.from || !values.to || !noun) return null;
    return { ...itemBase('setting', read, values.id, noun), from: values.from, to: values.to };
  },
});
