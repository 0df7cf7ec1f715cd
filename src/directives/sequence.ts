import type { Sequence } from '../model/sequence.ts';
import { meant, required } from './attributes/attribute.ts';
import { id, refs } from './attributes/attribute-types.ts';
import { directive } from './directive.ts';

/** Declares the order in which several fasteners are tightened together. */
export const sequence = directive({
  name: 'sequence',
  form: 'leaf',
  label: 'required',
  attributes: {
    id: meant(required(id), 'The name by which `:tighten` and `:loosen` speak of it.'),
    order: meant(
      required(refs),
      'The fasteners in the order in which they are tightened. Each pass of their torques goes through all of them.',
    ),
  },
  summary:
    'Declares the order in which fasteners of several kinds are tightened together, pass by pass: all through the first pass of their torque, then all through the second. `:tighten` and `:loosen` name it.',
  example: '::sequence[Bar bolts]{#bar-bolts order="upper-bolt lower-bolt axle-bolt"}',
  build: ({ values, directive: found, scope }): Sequence | null => {
    if (!values.id || !values.order || found.label === null) return null;
    return {
      id: values.id.value,
      idAt: values.id.at,
      label: found.labelText.trim(),
      order: values.order.value,
      origins: scope.origins,
      at: found.at,
    };
  },
});
