import type { Wear } from '../model/item.ts';
import { meant } from './attributes/attribute.ts';
import { list } from './attributes/attribute-types.ts';
import { itemAttributes, itemBase, labelled, pictureAttributes } from './attributes/item-attributes.ts';
import { unlisted } from './attributes/unlabelled.ts';
import { directive } from './directive.ts';

/** Declares protective equipment; without a label it comes from the tool crib. */
export const wear = directive({
  name: 'wear',
  form: 'leaf',
  label: 'optional',
  attributes: {
    ...itemAttributes,
    ...pictureAttributes,
    synonyms: meant(list, 'What else it is called; the search finds it by these too.'),
  },
  summary:
    'Declares protective equipment that the job asks for. A step that names it has it in a line of its own; what no step names is worn from the first step to the last.',
  example: '::wear{#eye-protection}',
  build: (read): Wear | null => {
    const { values, directive: found, scope } = read;
    if (!values.id) return null;
    const known = scope.crib.get(values.id.value);
    const noun = labelled(found.labelText, known?.noun);
    if (!noun) return unlisted('wear', values.id, found.nameAt, scope);
    const synonyms = values.synonyms?.value ?? known?.synonyms ?? [];
    return { ...itemBase('wear', read, values.id, noun), synonyms };
  },
});
