import type { Block } from '../model/block.ts';
import { when } from './attributes/when.ts';
import { directive } from './directive.ts';

/** Asks for a photograph as evidence. */
export const photo = directive({
  name: 'photo',
  form: 'leaf',
  label: 'required',
  attributes: { when },
  summary:
    'Asks for a photograph as evidence, where it stands in the text, and of each side within a step that is done on each; the label says what it must show. The print has a line for it, and the job is not signed off before it is ticked.',
  example: '::photo[The clip seated, seen from below]',
  build: ({ values, directive: found, scope }): Block | null =>
    found.label === null
      ? null
      : { type: 'photo', shows: scope.prose(found.label), when: values.when, at: found.at },
});
