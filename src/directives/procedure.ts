import type { Ref } from '../model/inline.ts';
import type { When } from '../model/when.ts';
import type { Span, Written } from '../source/span.ts';
import { type AttributeType, bad, good, meant, required } from './attributes/attribute.ts';
import { id, placedWords, ref, refs } from './attributes/attribute-types.ts';
import { when } from './attributes/when.ts';
import { directive } from './directive.ts';

/** Where a shared procedure is placed, and how it is adapted. */
export interface ProcedurePlace {
  readonly type: 'procedure';
  readonly of: Ref;
  readonly id: Written<string> | null;
  readonly only: readonly Ref[] | null;
  readonly except: readonly Ref[];
  readonly prefix: string | null;
  readonly options: readonly PassedOption[];
  readonly when: Written<When> | null;
  readonly at: Span;
}

/** One option of the procedure and the option of the guide that stands for it. */
interface PassedOption {
  readonly inner: Ref;
  readonly outer: Ref;
}

const passedOptions: AttributeType<readonly PassedOption[]> = {
  expects: "pairs of the procedure's option and the guide's, as in `fog=fog`",
  read: (text, at) => {
    const passed: PassedOption[] = [];
    for (const word of placedWords(text, at)) {
      const pair = /^([a-z0-9-]+)=([a-z0-9-]+)$/.exec(word.value);
      if (!pair?.[1] || !pair[2]) {
        return bad(
          `"${word.value}" was found where a pair was expected, as in "fog=fog"`,
          undefined,
          word.at,
        );
      }
      passed.push({ inner: { value: pair[1], at: word.at }, outer: { value: pair[2], at: word.at } });
    }
    return good(passed);
  },
};

/** Places a shared procedure: its declarations and its steps. */
export const procedure = directive({
  name: 'procedure',
  form: 'leaf',
  label: 'none',
  attributes: {
    of: meant(required(ref), 'The procedure: the name of its file in `procedures/`.'),
    id: meant(id, 'The name by which `::reverse` speaks of what is placed here.'),
    only: meant(refs, 'The steps that are placed; all others stay out.'),
    except: meant(refs, 'Steps that stay out.'),
    prefix: meant(id, 'Stands before each of its ids, so that it can be placed twice.'),
    options: meant(
      passedOptions,
      'Which option of the guide stands for which of the procedure, where their names differ.',
    ),
    when,
  },
  summary:
    'Places a shared procedure, with its declarations and steps. Of the steps that `only` or `except` leaves out, what holds, covers or plugs something that is still handled stays declared; the guide may do their work itself. A `prefix` keeps two placements apart; what the platform declares is one thing all the same.',
  example: '::procedure{of=front-cover-off #cover-procedure}',
  build: ({ values, directive: found }): ProcedurePlace | null =>
    values.of && {
      type: 'procedure',
      of: values.of.value,
      id: values.id,
      only: values.only?.value ?? null,
      except: values.except?.value ?? [],
      prefix: values.prefix?.value ?? null,
      options: values.options?.value ?? [],
      when: values.when,
      at: found.at,
    },
});
