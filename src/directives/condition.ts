import type { Condition } from '../model/item.ts';
import { meant } from './attributes/attribute.ts';
import { flag, words } from './attributes/attribute-types.ts';
import { itemAttributes, itemBase, labelled, pictureAttributes } from './attributes/item-attributes.ts';
import { unlabelled } from './attributes/unlabelled.ts';
import { directive } from './directive.ts';

/** Declares a state of the vehicle that has to hold for a while; without a label it comes from the platform. */
export const condition = directive({
  name: 'condition',
  form: 'leaf',
  label: 'optional',
  attributes: {
    ...itemAttributes,
    ...pictureAttributes,
    stays: meant(flag, 'It need not be cleared before the end, as a cure.'),
    set: meant(words, 'What is told where it is set, as in `set="raise the front"`.'),
    clear: meant(words, 'What is told where it is cleared, in steps that are worked out too.'),
  },
  summary:
    'Declares a state that is set and later cleared, with what is told there; without a label it is one that the platform declares, with that one’s words; `stays` frees it from being cleared. With `needs` it holds only while that holds: it lapses with it, comes back only by being set again, and need not be cleared then.',
  example:
    '::condition[Battery isolated]{#battery-off immobile set="unbolt the negative lead" clear="bolt the negative lead down"}',
  build: (read): Condition | null => {
    const { values, directive: found, scope } = read;
    if (!values.id) return null;
    const shared = scope.platformConditions;
    const known = shared.get(values.id.value);
    const noun = labelled(found.labelText, known?.noun);
    if (!noun)
      return unlabelled('condition', values.id, 'among the conditions of the platform', shared.keys(), scope);
    const own = itemBase('condition', read, values.id, noun);
    return {
      ...own,
      when: own.when ?? known?.when ?? null,
      with: own.with.length > 0 ? own.with : (known?.with ?? []),
      needs: own.needs.length > 0 ? own.needs : (known?.needs ?? []),
      work: own.work ?? known?.work ?? null,
      immobile: own.immobile || known?.immobile === true,
      zones: own.zones.length > 0 ? own.zones : (known?.zones ?? []),
      picture: own.picture ?? known?.picture ?? null,
      stays: values.stays !== null || known?.stays === true,
      setWords: values.set?.value ?? known?.setWords ?? null,
      clearWords: values.clear?.value ?? known?.clearWords ?? null,
      fromPlatform: known !== undefined,
    };
  },
});
