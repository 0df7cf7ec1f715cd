import type { Ref } from '../model/inline.ts';
import type { When } from '../model/when.ts';
import type { Span, Written } from '../source/span.ts';
import type { Estimate } from '../units/estimate.ts';
import { meant, required } from './attributes/attribute.ts';
import { estimate, ref, refs } from './attributes/attribute-types.ts';
import { when } from './attributes/when.ts';
import { directive } from './directive.ts';

/** Where the refit of earlier steps is worked out. */
export interface ReversePlace {
  readonly type: 'reverse';
  /** A section, a step or a placed procedure. */
  readonly of: Ref;
  readonly only: readonly Ref[] | null;
  readonly except: readonly Ref[];
  readonly time: Written<Estimate> | null;
  readonly when: Written<When> | null;
  readonly at: Span;
}

/** Works out the refit of a section, a step or a placed procedure as real steps. */
export const reverse = directive({
  name: 'reverse',
  form: 'leaf',
  label: 'none',
  attributes: {
    of: meant(required(ref), 'The section, the step or the placed procedure that is undone.'),
    only: meant(refs, 'The steps that are undone; all others are left.'),
    except: meant(refs, 'Steps that are left as they are.'),
    time: meant(estimate, 'Hands-on time of the whole refit; without it, that of taking off.'),
    when,
  },
  summary: 'Works out the refit of a section, a step or a placed procedure, as real steps in reverse order.',
  example: '::reverse{of=strip-down}',
  build: ({ values, directive: found }): ReversePlace | null =>
    values.of && {
      type: 'reverse',
      of: values.of.value,
      only: values.only?.value ?? null,
      except: values.except?.value ?? [],
      time: values.time,
      when: values.when,
      at: found.at,
    },
});
