import type { Block } from '../model/block.ts';
import { meant } from './attributes/attribute.ts';
import { estimate, refs } from './attributes/attribute-types.ts';
import { when } from './attributes/when.ts';
import { directive } from './directive.ts';

/** What is tried and measured at the end. */
export const prove = directive({
  name: 'prove',
  form: 'container',
  label: 'required',
  attributes: {
    needs: meant(refs, 'The conditions that must hold by then, and the products that must be cured.'),
    time: meant(estimate, 'Hands-on time of the whole list.'),
    when,
  },
  summary:
    'Lists what is tried and measured, with the time that takes; `needs` names the conditions that must hold by then.',
  example: ':::prove[Lamps]\n- Headlamps aim as before\n- :measure[clearance]\n:::',
  build: ({ values, directive: found, scope }): Block | null =>
    found.form === 'container'
      ? {
          type: 'prove',
          title: scope.prose(found.label ?? []),
          body: scope.body(found.children),
          needs: values.needs?.value ?? [],
          time: values.time,
          when: values.when,
          at: found.at,
        }
      : null,
});
