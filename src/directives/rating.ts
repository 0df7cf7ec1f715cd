import type { Rating } from '../model/item.ts';
import { meant } from './attributes/attribute.ts';
import { quantity } from './attributes/attribute-types.ts';
import { itemAttributes, itemBase, labelled } from './attributes/item-attributes.ts';
import { unlabelled } from './attributes/unlabelled.ts';
import { directive } from './directive.ts';

/** Declares what one link of a chain may carry, or what the job loads it with. */
export const rating = directive({
  name: 'rating',
  form: 'leaf',
  label: 'optional',
  attributes: {
    ...itemAttributes,
    limit: meant(
      quantity('mass', 'force', 'current', 'charge', 'power'),
      'What this link may carry, from its maker. The least of all limits governs.',
    ),
    claim: meant(
      quantity('mass', 'force', 'current', 'charge', 'power'),
      'What the job says that the whole carries. More than the least limit is a finding.',
    ),
  },
  summary:
    'Declares a limit of something that carries or tows, or a load that is claimed; the weakest limit governs. Without a label it is one that the platform declares: in a visit the claims of all guides that name it are summed. A load in ampere-hours is held against what a battery may give.',
  example: '::rating[Set of three brackets]{#bracket-rating limit="75 kg"}',
  build: (read): Rating | null => {
    const { values, directive: found, scope } = read;
    if (!values.id) return null;
    const shared = scope.platformRatings;
    const known = shared.get(values.id.value);
    const noun = labelled(found.labelText, known?.noun);
    if (!noun)
      return unlabelled('rating', values.id, 'among the ratings of the platform', shared.keys(), scope);
    const own = itemBase('rating', read, values.id, noun);
    return {
      ...own,
      when: own.when ?? known?.when ?? null,
      zones: own.zones.length > 0 ? own.zones : (known?.zones ?? []),
      limit: values.limit ?? known?.limit ?? null,
      claim: values.claim,
      fromPlatform: known !== undefined,
    };
  },
});
