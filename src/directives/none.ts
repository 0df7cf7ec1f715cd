import type { None } from '../model/guide.ts';
import { meant, required } from './attributes/attribute.ts';
import { oneOf } from './attributes/attribute-types.ts';
import { directive } from './directive.ts';

/** Says that a guide needs nothing of a kind, on purpose. */
export const none = directive({
  name: 'none',
  form: 'leaf',
  label: 'none',
  attributes: {
    of: meant(
      required(oneOf('wear', 'tools', 'supplies', 'kit', 'conditions')),
      'The list that is empty on purpose.',
    ),
  },
  summary: 'Says that none is needed: forgotten and not needed differ.',
  example: '::none{of=conditions}',
  build: ({ values, directive: found }): None | null =>
    values.of ? { of: values.of.value, at: found.at } : null,
});
