import type { Block } from '../model/block.ts';
import { directive } from './directive.ts';
import { when } from './when.ts';

/** What is tried and measured at the end. */
export const prove = directive({
  name: 'prove',
  form: 'container',
  label: 'required',
  attributes: { when },
  summary: 'Lists what is tried and measured when the work is done.',
  example: ':::prove[Lamps]\n- Headlamps aim as before\n- :measure[clearance]\n:::',
  build: ({ values, directive: found, scope }): Block | null =>
    found.form === 'container'
      ? {
          type: 'prove',
          title: scope.prose(found.label ?? []),
          body: scope.body(found.children),
          when: values.when,
          at: found.at,
        }
      : null,
});
