import type { Step } from '../model/guide.ts';
import { meant, required } from './attributes/attribute.ts';
import {
  estimate,
  flag,
  id,
  oneOf,
  ref,
  refs,
  size,
  wholeNumber,
  words,
} from './attributes/attribute-types.ts';
import { when } from './attributes/when.ts';
import { stepZones } from './attributes/zones.ts';
import { directive } from './directive.ts';

/** A step as its opening line states it; what it holds follows in the text. */
export type StepHead = Omit<Step, 'blocks'>;

/** Opens a step, which runs to the next step or heading. */
export const step = directive({
  name: 'step',
  form: 'leaf',
  label: 'required',
  attributes: {
    id: meant(required(id), 'The name by which links, `after`, `trial` and `::reverse` speak of the step.'),
    side: meant(
      oneOf('each', 'left', 'right'),
      '`each` is done twice, once on each side; its text then names what is on one.',
    ),
    time: meant(estimate, 'Hands-on time, for one side: one value, a range, or least, likely and most.'),
    times: meant(
      wholeNumber(2, 20),
      'How often the step is done, on each side; with `until`, at most how often.',
    ),
    until: meant(
      ref,
      'The measure whose reading ends the repeating once it is as expected. The step takes it each time.',
    ),
    wait: meant(
      size('time'),
      'Time after the step in which nobody works, as for a cure. It holds up what follows.',
    ),
    people: meant(
      wholeNumber(1, 9),
      'How many have their hands on it. The page says when a helper is needed, and for how long.',
    ),
    'sign-off': meant(oneOf('second'), 'A second person looks at the work and signs for it.'),
    'any-order': meant(
      flag,
      'It may change places with other such steps of its section, as far as what both have their hands on, and `after`, allow.',
    ),
    stop: meant(
      flag,
      'The job ends here for the builds and findings that the step stands for; nothing after it is done or gathered.',
    ),
    after: meant(refs, 'Earlier steps that must be done first, where nothing that is handled shows it.'),
    needs: meant(refs, 'What must hold, be cured or be in range from its first to its last action.'),
    zone: meant(
      stepZones,
      'Where it is done, where what it handles does not tell: zones of the platform, or `off` for work off the vehicle.',
    ),
    'refit-title': meant(
      words,
      'The title of the step that undoes it; without it, its first action gives one.',
    ),
    when,
  },
  summary:
    'Opens a step, which runs to the next step or heading. Time is hands-on, per side. A step with `times` is done so often; with `until` as well it is done until that reading is as expected, and at most so often. A step marked `any-order` may change places with others of its section, as far as what both have their hands on, and `after` (earlier steps that must be done first), allow. What it `needs` holds from its beginning to its last action. With `stop` the job ends with it, which makes sense where it hangs on what an inspection found.',
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
      times: values.times,
      until: values.until?.value ?? null,
      wait: values.wait && { value: values.wait.value.base, at: values.wait.at },
      people: values.people?.value ?? 1,
      signOff: values['sign-off'] !== null,
      stop: values.stop !== null,
      anyOrder: values['any-order'] !== null,
      after: values.after?.value ?? [],
      needs: values.needs?.value ?? [],
      zones: values.zone?.value ?? [],
      when: values.when,
      origins: scope.origins,
      unknown,
      at: found.at,
    };
  },
});
