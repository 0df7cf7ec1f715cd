import type { Block } from '../model/block.ts';
import { when } from './attributes/when.ts';
import { directive } from './directive.ts';

/** What is said when the step is reversed. */
export const refitNote = directive({
  name: 'refit-note',
  form: 'container',
  label: 'none',
  attributes: { when },
  summary: 'Speaks when its step is reversed, and only there.',
  example: ':::refit-note\nSeat the lower lip first, then press along the edge.\n:::',
  build: ({ values, directive: found, scope }): Block | null =>
    found.form === 'container'
      ? { type: 'refit-note', body: scope.body(found.children), when: values.when, at: found.at }
      : null,
});
