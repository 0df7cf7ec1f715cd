import type { Inline } from '../model/prose.ts';
import { required } from './attributes/attribute.ts';
import { when } from './attributes/when.ts';
import { directive } from './directive.ts';

/** Words or a list item that stand only for some builds. */
export const where = directive({
  name: 'where',
  form: 'text',
  label: 'required',
  attributes: { when: required(when) },
  summary: 'Words that stand only for the builds that `when` names.',
  example: ':where[Reach behind and :disconnect[fog-plug].]{when=fog}',
  build: ({ values, directive: found, scope }): Inline | null =>
    values.when && {
      type: 'where',
      when: values.when,
      children: scope.prose(found.label ?? []),
      at: found.at,
    },
});
