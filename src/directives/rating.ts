import type { Rating } from '../model/item.ts';
import { meant } from './attribute.ts';
import { quantity } from './attribute-types.ts';
import { directive } from './directive.ts';
import { itemAttributes, itemBase, labelled } from './item-attributes.ts';

/** Declares what one link of a chain may carry, or what the job loads it with. */
export const rating = directive({
  name: 'rating',
  form: 'leaf',
  label: 'required',
  attributes: {
    ...itemAttributes,
    limit: meant(
      quantity('mass', 'force', 'current', 'power'),
      'What this link may carry, from its maker. The least of all limits governs.',
    ),
    claim: meant(
      quantity('mass', 'force', 'current', 'power'),
      'What the job says that the whole carries. More than the least limit is a finding.',
    ),
  },
  summary:
    'Declares a limit of something that carries or tows, or a load that is claimed; the weakest limit governs.',
  example: '::rating[Set of three brackets]{#bracket-rating limit="75 kg"}',
  build: (read): Rating | null => {
    const { values, directive: found } = read;
    const noun = labelled(found.labelText, undefined);
    if (!values.id || !noun) return null;
    return { ...itemBase('rating', read, values.id, noun), limit: values.limit, claim: values.claim };
  },
});
