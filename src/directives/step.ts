import type { Step } from '../model/guide.ts';
import { required } from './attribute.ts';
import { estimate, flag, id, oneOf, refs, size, wholeNumber, words } from './attribute-types.ts';
import { directive } from './directive.ts';
import { when } from './when.ts';

/** A step as its opening line states it; what it holds follows in the text. */
export type StepHead = Omit<Step, 'blocks'>;

/** Opens a step, which runs to the next step or heading. */
export const step = directive({
  name: 'step',
  form: 'leaf',
  label: 'required',
  attributes: {
    id: required(id),
    side: oneOf('each', 'left', 'right'),
    time: estimate,
    wait: size('time'),
    people: wholeNumber(1, 9),
    'sign-off': oneOf('second'),
    'any-order': flag,
    stop: flag,
    after: refs,
    needs: refs,
    'refit-title': words,
    when,
  },
  summary:
    'Opens a step, which runs to the next step or heading. Time is hands-on, per side. A step marked `any-order` may change places with others of its section, as far as what both have their hands on, and `after` (earlier steps that must be done first), allow. What it `needs` holds from its beginning to its last action. With `stop` the job ends with it, which makes sense where it hangs on what an inspection found.',
  example: '::step[Draw the cover forward]{#cover-off people=2 time="4..8 min"}',
  build: ({ values, unknown, directive: found, scope }): StepHead | null => {
    if (!values.id || found.label === null) return null;
    return {
      id: values.id.value,
      idAt: values.id.at,
      title: scope.prose(found.label),
      titleText: found.labelText,
      refitTitle: values['refit-title']?.value ?? null,
      side: values.side,
      time: values.time,
      wait: values.wait && { value: values.wait.value.base, at: values.wait.at },
      people: values.people?.value ?? 1,
      signOff: values['sign-off'] !== null,
      stop: values.stop !== null,
      anyOrder: values['any-order'] !== null,
      after: values.after?.value ?? [],
      needs: values.needs?.value ?? [],
      when: values.when,
      origins: scope.origins,
      unknown,
      at: found.at,
    };
  },
});
